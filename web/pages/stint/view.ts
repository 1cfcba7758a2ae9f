import type { Room } from './room.ts';

/** What the middle of the sheet shows: how near one looks, and whether drawn or in figures; phases and doubt are of the whole stint only, a ledger of a stretch. */
export interface View {
  rung: 'moment' | 'lap' | 'stint' | 'all';
  form: 'chart' | 'table' | 'ledger' | 'phases' | 'doubt';
}

/** Whoever goes where what is shown cannot be gets the drawing there. */
export const atRung = ({ form }: View, rung: View['rung']): View => ({
  rung,
  form: isThere(form, rung) ? form : 'chart',
});

export const inForm = ({ rung }: View, form: View['form']): View => ({
  rung: isThere(form, rung) ? rung : rung === 'moment' && form === 'ledger' ? 'lap' : 'stint',
  form,
});

function isThere(form: View['form'], rung: View['rung']): boolean {
  if (form === 'phases' || form === 'doubt') return rung === 'stint';
  return form !== 'ledger' || rung === 'lap' || rung === 'stint';
}

/** Which part of the moment's column the middle draws large, so that something else may stand there. */
export function nearest({ rung, form }: View, { isWide }: Room): View['rung'] {
  if (form !== 'chart' || rung === 'all') return 'stint';
  return rung === 'lap' && !isWide ? 'stint' : rung;
}
