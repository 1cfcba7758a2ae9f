import type { Room } from './room.ts';

/** What the middle of the sheet shows: how near one looks, and whether drawn or in figures; phases and doubt are of the whole stint only, a ledger of a stretch. */
export interface View {
  rung: 'moment' | 'lap' | 'stint';
  form: 'chart' | 'table' | 'ledger' | 'phases' | 'doubt';
}

/** Whoever goes nearer than what is shown can be gets the drawing there. */
export const atRung = ({ form }: View, rung: View['rung']): View => ({
  rung,
  form: (isOfStint(form) && rung !== 'stint') || (form === 'ledger' && rung === 'moment') ? 'chart' : form,
});

export const inForm = ({ rung }: View, form: View['form']): View => ({
  rung: isOfStint(form) ? 'stint' : form === 'ledger' && rung === 'moment' ? 'lap' : rung,
  form,
});

const isOfStint = (form: View['form']): boolean => form === 'phases' || form === 'doubt';

/** Which part of the moment's column the middle draws large, so that something else may stand there. */
export function nearest({ rung, form }: View, { isWide }: Room): View['rung'] {
  if (form !== 'chart' || rung === 'stint') return 'stint';
  return rung === 'lap' && !isWide ? 'stint' : rung;
}
