/** What a file holds before it is understood, and which units it states. */
import type { TraceChoices } from '../circuit/understood.ts';
import type { GuessedFormat } from './guess-format.ts';
import type { Header } from './header.ts';
import type { Columns } from './read-columns.ts';
import type { Roles } from './roles.ts';
import { unitNamed, unitsOf } from './units.ts';

export interface Sources {
  format: GuessedFormat;
  header: Header;
  columns: Columns;
  roles: Roles;
  choices: TraceChoices;
}

/** What the file states, as a unit of the column's role; empty where it states none. */
export function statedUnit({ header, columns, roles }: Sources, i: number): string {
  const role = roles[i];
  if (!role || columns.kinds[i] === 'clock' || columns.kinds[i] === 'date-time') return '';
  return unitNamed(role, header.units[i]!) ?? '';
}

/** Whether a person said what a column is: then a unit of something else in its name is no unit. */
export const isSaid = ({ choices }: Sources, i: number): boolean =>
  choices.roles?.[i] !== undefined && choices.roles[i] !== null;

/** Whether a column that a lap needs states a unit that is none of its role's, and nobody chose another. */
export function isForeign(sources: Sources, i: number): boolean {
  const { header, roles, choices, columns } = sources;
  const role = roles[i];
  if (role !== 'speed' && role !== 'time' && role !== 'distance') return false;
  if (header.units[i] === '' || columns.kinds[i] !== 'number') return false;
  return !choices.units?.[i] && !statedUnit(sources, i) && !isSaid(sources, i);
}

export const foreignUnits = (sources: Sources): string[] =>
  sources.header.names.flatMap((name, i) =>
    isForeign(sources, i)
      ? [
          `column ${name}: expected a unit of ${unitsOf(sources.roles[i]!).join(', ')}, got '${sources.header.units[i]}'`,
        ]
      : [],
  );

export function chosenUnit({ roles, choices, columns }: Sources, i: number): string | undefined {
  const role = roles[i];
  const chosen = choices.units?.[i];
  if (!role || chosen === undefined || columns.kinds[i] === 'clock' || columns.kinds[i] === 'date-time')
    return undefined;
  return unitNamed(role, chosen);
}
