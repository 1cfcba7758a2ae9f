/** What the middle of the sheet shows: the lap as a chart only, the stint in every form. */
export interface View {
  rung: 'lap' | 'stint';
  form: 'chart' | 'table' | 'phases';
}

/** Table and phases are of the whole stint: whoever wants the lap gets its chart. */
export const atRung = (view: View, rung: View['rung']): View => ({
  rung,
  form: rung === 'lap' ? 'chart' : view.form,
});

export const inForm = (view: View, form: View['form']): View => ({
  rung: form === 'chart' ? view.rung : 'stint',
  form,
});
