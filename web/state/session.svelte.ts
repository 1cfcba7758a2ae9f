/** The one session of the page: the scenario under the hand, the last good picture of it, and what it is held against. */
import type { Axle, Changes, Problem, RunReply, RunRequest, Scenario } from '../../engine/index.ts';
import { valueAt, withValue } from '../../engine/scenario/tree.ts';
import { defaultScenario } from '../../engine/scenario/default-scenario.ts';
import type { Parsed } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import { stepWords } from '../display/step-words.ts';
import { browserAlarm } from './alarm.ts';
import { checks, loadChecks } from './checks.ts';
import { engineClient, type Alarm, type EngineClient, type OpenDoor } from './engine-client.ts';
import type { EventPart } from './event-part.ts';
import { emptyHistory, noted, redone, settled, undone, type History, type Moved } from './history.ts';
import { Pins, withPin, type Pin, type PinnedStint, type Run } from './pins.svelte.ts';
import { onSameTrack } from './same-track.ts';
import { equalised } from './sides.ts';

export type { Run };

/** What undo brings back. */
export interface Sheet {
  scenario: Scenario;
  pins: readonly Pin[];
  /** null, or nothing in a step of an earlier version: the example that the Plan page opens with. */
  event?: EventPart | null;
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
  #pins: Pins;
  #chosen = $state.raw<Scenario | null>(null);
  #madeRoom = $state.raw<Pin | null>(null);
  #event = $state.raw<EventPart | null>(null);
  #problems = $state.raw<readonly Problem[]>([]);
  #failure = $state('');
  #busy = $state(true);
  #restarted = $state(false);
  #history = $state.raw<History<Sheet>>(emptyHistory);
  #client: EngineClient;

  constructor(open: () => OpenDoor, alarm: Alarm = browserAlarm, scenario = defaultScenario()) {
    this.#scenario = $state.raw(scenario);
    this.#pins = new Pins(open);
    const replied = (reply: RunReply, asked: RunRequest) => this.#replied(reply, asked);
    this.#client = engineClient(
      open,
      { replied, busy: (is) => (this.#busy = is), restarted: () => (this.#restarted = true) },
      alarm,
    );
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
  /** Held beside it, the oldest first. */
  get pins(): readonly PinnedStint[] {
    return this.#pins.runs;
  }
  /** The one that the newest took the place of; null where it took none. */
  get madeRoom(): Pin | null {
    return this.#madeRoom;
  }
  /** The one of them that differences are told against: the one chosen, else the newest. */
  get pinned(): PinnedStint | null {
    const pins = this.#pins.runs;
    return pins.find(({ scenario }) => scenario === this.#chosen) ?? pins.at(-1) ?? null;
  }
  get isBusy(): boolean {
    return this.#busy;
  }
  /** The worker died on the last change and was started again. */
  get hasRestarted(): boolean {
    return this.#restarted;
  }
  /** What is wrong, one line each; the picture stays. Empty when nothing is. */
  get complaints(): readonly string[] {
    const lines = this.#problems.map(problemLine);
    return this.#failure ? [...lines, this.#failure] : lines;
  }
  /** The event that is planned, checked by whoever changed it; null: nobody has. */
  get event(): EventPart | null {
    return this.#event;
  }
  get history(): History<Sheet> {
    return this.#history;
  }
  get undoName(): string | null {
    const step = this.#history.past.at(-1);
    return step ? stepWords(step.name, step.key, step.state.scenario, this.#scenario) : null;
  }
  get redoName(): string | null {
    const step = this.#history.future.at(-1);
    return step ? stepWords(step.name, step.key, this.#scenario, step.state.scenario) : null;
  }

  /**
   * Changes values at dotted keys; under one name they are one step until `settle`.
   * Returns what was refused, for the control to say; then nothing has changed.
   */
  change(changes: Changes, name: string): readonly Problem[] {
    const parsed = checks().override(this.#scenario, changes);
    if (!parsed.ok) return parsed.problems;
    const moved = Object.keys(changes).filter((key) => valueAt(this.#scenario, key) !== changes[key]);
    return this.#take(parsed, name, moved.length === 1 ? (moved[0] ?? null) : null);
  }

  /** Lays out the phases anew with the laps they add up to; the rest as `change`. */
  changePhases(
    { phases, laps }: Pick<Scenario['stint'], 'phases' | 'laps'>,
    name: string,
  ): readonly Problem[] {
    const stint = { ...this.#scenario.stint, phases, laps };
    const parsed = checks().checkScenario({ ...this.#scenario, stint });
    return parsed.ok ? this.#take(parsed, name) : parsed.problems;
  }

  /** Another set of panels for an axle's mouth. Returns what was refused: what nobody can cut is no panel. */
  fitPanels(axle: Axle, panels_pct: readonly number[]): readonly Problem[] {
    const next = withValue(this.#scenario, `brakes.${axle}.duct.panels_pct`, panels_pct) as Scenario;
    const unfit = this.unfitPanels(axle, next);
    return unfit.length > 0 ? unfit : this.replace(next, `${axle} panels`);
  }

  /** Panels of an axle's set that cannot be made for its mouth as it is, or as it would be. */
  unfitPanels(axle: Axle, scenario = this.#scenario): readonly Problem[] {
    return checks()
      .panelProblems(scenario)
      .filter(({ key }) => key.startsWith(`brakes.${axle}.`));
  }

  /** Drops what one side of an axle has of its own, as one step. */
  equalSides(axle: Axle): void {
    this.replace(equalised(this.#scenario, axle), `${axle} left and right`);
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
    const refused = this.#take(checks().checkScenario({ ...this.#scenario, trace }), 'trace');
    this.settle();
    return refused;
  }

  /** Holds the run in sight as well. */
  pin(): void {
    if (!this.#shown) return;
    const { scenario } = this.#shown;
    this.#chosen = scenario;
    if (this.#pins.held.some((pin) => pin.scenario === scenario)) return;
    this.#pins.keep(this.#shown);
    const before = this.#pins.held;
    const after = withPin(before, scenario);
    this.#repin(after, 'pinning');
    this.#madeRoom = before.find((pin) => !after.includes(pin)) ?? null;
  }
  unpin({ scenario }: Pin): void {
    this.#repin(
      this.#pins.held.filter((pin) => pin.scenario !== scenario),
      'unpinning',
    );
  }
  /** Tells differences against this one. */
  compareWith({ scenario }: Pin): void {
    this.#chosen = scenario;
  }
  /** Holds the runs of these scenarios, which were checked; no step of its own. They are there when they have been run. */
  holdPins(scenarios: readonly Scenario[]): Promise<void> {
    return this.#pins.hold(scenarios.reduce(withPin, []));
  }

  /** Another scenario whole, with another event where one is given, as a step of its own. Returns what was refused. */
  replace(scenario: unknown, name: string, event = this.#event): readonly Problem[] {
    const parsed = checks().checkScenario(scenario);
    if (!parsed.ok) return parsed.problems;
    this.settle();
    this.#take(parsed, name);
    this.#event = event;
    this.settle();
    return [];
  }

  /** Another event, as a step; under one name it is one step until `settle`. */
  changeEvent(event: EventPart, name: string): void {
    this.#history = noted(this.#history, this.#sheet, name);
    this.#event = event;
  }
  /** The event that was kept; no step of its own. */
  holdEvent(event: EventPart): void {
    this.#event = event;
  }
  /** Steps of an earlier time, which go before those that were taken since. */
  remember({ past, future }: Pick<History<Sheet>, 'past' | 'future'>): void {
    const { past: since } = this.#history;
    this.#history = {
      ...this.#history,
      past: [...past, ...since],
      future: since.length > 0 ? this.#history.future : future,
    };
  }

  undo(): void {
    this.#stepTo(undone(this.#history, this.#sheet));
  }
  redo(): void {
    this.#stepTo(redone(this.#history, this.#sheet));
  }

  close(): void {
    this.#client.close();
  }

  /** Something of the library, which is loaded for it. */
  async #choose(name: string, scenarioFrom: (library: Library) => Scenario): Promise<void> {
    const loaded = await Promise.all([library(), loadChecks()]).catch(() => null);
    this.#failure = loaded
      ? ''
      : `The ${name} could not be loaded. Choose it again when the network is back.`;
    if (!loaded) return;
    const [files, { checkScenario }] = loaded;
    this.#take(checkScenario(scenarioFrom(files)), name);
    this.settle();
  }

  get #sheet(): Sheet {
    return { scenario: this.#scenario, pins: this.#pins.held, event: this.#event };
  }

  #repin(pins: readonly Pin[], name: string): void {
    this.settle();
    this.#history = settled(noted(this.#history, this.#sheet, name));
    this.#madeRoom = null;
    void this.#pins.hold(pins);
  }

  #take(parsed: Parsed, name: string, key: string | null = null): readonly Problem[] {
    this.#problems = parsed.ok ? [] : parsed.problems;
    if (!parsed.ok) return parsed.problems;
    this.#history = noted(this.#history, this.#sheet, name, key);
    this.#go(parsed.scenario);
    return [];
  }

  #stepTo(step: Moved<Sheet> | null): void {
    if (!step) return;
    const { scenario, pins, event = null } = step.state;
    this.#history = step.history;
    // a step that was kept may be of another version
    const parsed = checks().checkScenario(scenario);
    this.#problems = parsed.ok ? [] : parsed.problems;
    if (!parsed.ok) return;
    this.#madeRoom = null;
    this.#event = event;
    void this.#pins.hold(pins);
    if (scenario !== this.#scenario) this.#go(scenario);
  }

  #go(scenario: Scenario): void {
    this.#scenario = scenario;
    this.#restarted = false;
    this.#client.request(scenario);
  }

  #replied(reply: RunReply, { scenario }: RunRequest): void {
    this.#failure = '';
    if (reply.kind === 'result') {
      this.#shown = { scenario, result: onSameTrack(reply.result, this.#shown?.result) };
    } else this.#failure = this.#shown ? lostWords(reply.message) : NOT_STARTED;
  }
}
