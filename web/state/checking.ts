/** What checks a scenario and what makes changes to one: the schema with its rules. Loaded by `checks.ts`. */
export { panelProblems } from '../../engine/scenario/blank-rules.ts';
export { override } from '../../engine/scenario/override.ts';
export { checkScenario } from '../../engine/scenario/parse.ts';
