import { loadChecks } from '../../state/checks.ts';
import { library } from '../../state/session.svelte.ts';
import { tapeFields, windowFields } from './lever-parts.ts';

/** The parts of the stint's page that are not in its first view. Each is loaded when it is shown, or once the page is at rest. */
export const phaseEditor = () => import('./phases/PhaseEditor.svelte');
export const lapTrace = () => import('../../charts/LapTrace.svelte');
export const moment = () => import('./Moment.svelte');
export const lapSamples = () => import('./LapSamples.svelte');
export const discMoment = () => import('./MomentDrawing.svelte');
export const allBlankings = () => import('./AllBlankings.svelte');
export const lapTable = () => import('./LapTable.svelte');
export const ledger = () => import('../../charts/Ledger.svelte');
export const feelList = () => import('./FeelList.svelte');
export const standing = () => import('../../frame/Standing.svelte');
export const keptSheet = () => import('../../frame/KeptSheet.svelte');
export const whence = () => import('./Whence.svelte');
export const sentenceNotes = () => import('./notes/sentence-notes.ts');
export const printRoom = () => import('../../print/PrintRoom.svelte');
export const menu = () => import('../../frame/Menu.svelte');
export const overChart = () => import('./over-chart.ts');
export const pinList = () => import('./Pins.svelte');
export const howSure = () => import('./doubt/HowSure.svelte');
/** Shown when what checks a change is there. */
export const levers = async () => (await loadChecks(), import('./Levers.svelte'));
export const tray = async () => (await loadChecks(), import('./Tray.svelte'));
export const traceFile = () => import('./import/trace-file.ts');

/** Loads them all, so that nothing has to be waited for. What fails is loaded, or told of, when it is shown. */
export function loadAll(): void {
  for (const load of [
    phaseEditor,
    lapTrace,
    lapSamples,
    discMoment,
    allBlankings,
    lapTable,
    ledger,
    feelList,
    overChart,
    pinList,
    howSure,
    menu,
    tapeFields,
    windowFields,
    tray,
    traceFile,
    library,
  ])
    load().catch(() => undefined);
}
