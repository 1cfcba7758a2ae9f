/** What the middle of the sheet shows. */
export interface View {
  rung: 'lap' | 'stint';
  form: 'chart' | 'table' | 'phases';
}
