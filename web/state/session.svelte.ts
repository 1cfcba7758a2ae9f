/** The one session of the page: the scenario under the hand, the last good picture of it, and what it is held against. */
import type {
  Axle,
  Changes,
  Problem,
  RunReply,
  RunRequest,
  Scenario,
  StintResult,
} from '../../engine/index.ts';
import { withValue } from '../../engine/scenario/tree.ts';
import { defaultScenario } from '../../engine/scenario/default-scenario.ts';
import { override } from '../../engine/scenario/override.ts';
import { checkScenario, type Parsed } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import { browserAlarm } from './alarm.ts';
import { engineClient, type Alarm, type EngineClient, type OpenDoor } from './engine-client.ts';
import { emptyHistory, noted, redone, settled, undone } from './history.ts';
import { onSameTrack } from './same-track.ts';
import { equalised } from './sides.ts';

/** A finished run: the picture and the scenario it is the picture of. */
export interface Run {
  scenario: Scenario;
  result: StintResult;
}

export const library = () => import('../../engine/scenario/library.ts');
type Library = Awaited<ReturnType<typeof library>>;

const lostWords = (why: string): string =>
  `The stint could not be computed: ${why}. The last good picture stays.`;
/** Before the first picture there is none to stay. */
const NOT_STARTED = 'The simulator did not start. Reload the page.';

export class Session {
  #scenario: Scenario;
  #shown = $state.raw<Run | null>(null);
  #pinned = $state.raw<Run | null>(null);
  #problems = $state.raw<readonly Problem[]>([]);
  #failure = $state('');
  #busy = $state(true);
  #history = $state.raw(emptyHistory);
  #client: EngineClient;

  constructor(open: () => OpenDoor, alarm: Alarm = browserAlarm, scenario = defaultScenario()) {
    this.#scenario = $state.raw(scenario);
    const replied = (reply: RunReply, asked: RunRequest) => this.#replied(reply, asked);
    this.#client = engineClient(open, { replied, busy: (is) => (this.#busy = is) }, alarm);
    this.#client.request(scenario);
  }

  /** What the controls show: ahead of the picture by the run under way. */
  get scenario(): Scenario {
    return this.#scenario;
  }
  /** The last good picture; null only before the first. */
  get shown(): Run | null {
    return this.#shown;
  }
  get pinned(): Run | null {
    return this.#pinned;
  }
  get isBusy(): boolean {
    return this.#busy;
  }
  /** What is wrong, one line each; the picture stays. Empty when nothing is. */
  get complaints(): readonly string[] {
    const lines = this.#problems.map(problemLine);
    return this.#failure ? [...lines, this.#failure] : lines;
  }
  get undoName(): string | null {
    return this.#history.past.at(-1)?.name ?? null;
  }
  get redoName(): string | null {
    return this.#history.future.at(-1)?.name ?? null;
  }

  /**
   * Changes values at dotted keys; under one name they are one step until `settle`.
   * Returns what was refused, for the control to say; then nothing has changed.
   */
  change(changes: Changes, name: string): readonly Problem[] {
    const parsed = override(this.#scenario, changes);
    return parsed.ok ? this.#take(parsed, name) : parsed.problems;
  }

  /** Lays out the phases anew with the laps they add up to; the rest as `change`. */
  changePhases(
    { phases, laps }: Pick<Scenario['stint'], 'phases' | 'laps'>,
    name: string,
  ): readonly Problem[] {
    const stint = { ...this.#scenario.stint, phases, laps };
    const parsed = checkScenario({ ...this.#scenario, stint });
    return parsed.ok ? this.#take(parsed, name) : parsed.problems;
  }

  /** Another set of panels for an axle's mouth. Returns what was refused. */
  fitPanels(axle: Axle, panels_pct: readonly number[]): readonly Problem[] {
    const key = `brakes.${axle}.duct.panels_pct`;
    return this.#whole(withValue(this.#scenario, key, panels_pct), `${axle} panels`);
  }

  /** Drops what one side of an axle has of its own, as one step. */
  equalSides(axle: Axle): void {
    this.#whole(equalised(this.#scenario, axle), `${axle} left and right`);
  }

  /** The hand has let go of a control. */
  settle(): void {
    this.#history = settled(this.#history);
  }

  chooseStint(id: string): Promise<void> {
    return this.#choose('stint', ({ shippedStint }) => shippedStint(id));
  }
  chooseCar(id: string): Promise<void> {
    return this.#choose('car', ({ withCar }) => withCar(this.#scenario, id));
  }
  chooseCircuit(id: string): Promise<void> {
    return this.#choose('circuit', ({ withCircuit }) => withCircuit(this.#scenario, id));
  }
  /** Runs the stint on a measured lap, or on the driver model again. Returns what was refused. */
  driveTrace(trace: Scenario['trace']): readonly Problem[] {
    const refused = this.#take(checkScenario({ ...this.#scenario, trace }), 'trace');
    this.settle();
    return refused;
  }

  pin(): void {
    this.#pinned = this.#shown;
  }
  unpin(): void {
    this.#pinned = null;
  }

  undo(): void {
    const step = undone(this.#history, this.#scenario);
    if (step) this.#stepTo(step);
  }
  redo(): void {
    const step = redone(this.#history, this.#scenario);
    if (step) this.#stepTo(step);
  }

  close(): void {
    this.#client.close();
  }

  /** A change that no single key holds: a step of its own. */
  #whole(scenario: unknown, name: string): readonly Problem[] {
    const parsed = checkScenario(scenario);
    if (!parsed.ok) return parsed.problems;
    this.settle();
    this.#take(parsed, name);
    this.settle();
    return [];
  }

  /** Something of the library, which is loaded for it. */
  async #choose(name: string, scenarioFrom: (library: Library) => Scenario): Promise<void> {
    const loaded = await library().catch(() => null);
    this.#failure = loaded
      ? ''
      : `The ${name} could not be loaded. Choose it again when the network is back.`;
    if (!loaded) return;
    this.#take(checkScenario(scenarioFrom(loaded)), name);
    this.settle();
  }

  #take(parsed: Parsed, name: string): readonly Problem[] {
    this.#problems = parsed.ok ? [] : parsed.problems;
    if (!parsed.ok) return parsed.problems;
    this.#history = noted(this.#history, this.#scenario, name);
    this.#go(parsed.scenario);
    return [];
  }

  #stepTo(step: { history: typeof emptyHistory; scenario: Scenario }): void {
    this.#history = step.history;
    this.#problems = [];
    this.#go(step.scenario);
  }

  #go(scenario: Scenario): void {
    this.#scenario = scenario;
    this.#client.request(scenario);
  }

  #replied(reply: RunReply, { scenario }: RunRequest): void {
    this.#failure = '';
    if (reply.kind === 'result') {
      this.#shown = { scenario, result: onSameTrack(reply.result, this.#shown?.result) };
    } else this.#failure = this.#shown ? lostWords(reply.message) : NOT_STARTED;
  }
}
