import { describe, expect, it } from 'vitest';
import { atRung, inForm, type View } from '../../../web/pages/stint/view.ts';

const rungs = ['moment', 'lap', 'stint', 'all'] as const satisfies View['rung'][];
const forms = ['chart', 'table', 'ledger', 'phases', 'doubt'] as const satisfies View['form'][];
const views = rungs.flatMap((rung) => forms.map((form): View => ({ rung, form })));

describe('what the middle shows', () => {
  it('is always the rung or the form that was asked for', () => {
    for (const view of views) {
      for (const rung of rungs) expect(atRung(view, rung).rung).toBe(rung);
      for (const form of forms) expect(inForm(view, form).form).toBe(form);
    }
  });

  it('is a ledger of a lap or of the stint only: from a moment it is that of its lap', () => {
    expect(inForm({ rung: 'moment', form: 'chart' }, 'ledger')).toEqual({ rung: 'lap', form: 'ledger' });
    expect(inForm({ rung: 'all', form: 'chart' }, 'ledger')).toEqual({ rung: 'stint', form: 'ledger' });
    expect(atRung({ rung: 'stint', form: 'ledger' }, 'lap')).toEqual({ rung: 'lap', form: 'ledger' });
    expect(atRung({ rung: 'lap', form: 'ledger' }, 'moment')).toEqual({ rung: 'moment', form: 'chart' });
  });
});
