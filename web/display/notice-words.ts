/** A remark of the engine, or another text with the scenario's own units in it, in those that are shown. */
import { numberIn } from './format.ts';
import { unitName } from './units.ts';

/** "712 °C", "20 to 900 °C": not a unit that only begins like one of these, such as m/s. */
const MEASURED = /([-\d.]*\d)( to [-\d.]*\d)?([ \u00a0])(°C|K|km\/h|mm|cm²|k?m|k?Pa|g\/s|kg)(?![\w/²³])/g;

export const noticeWords = (text: string): string =>
  text.replace(MEASURED, (whole: string, first: string, to: string | undefined, gap: string, own: string) => {
    if (unitName(own) === own) return whole;
    const shown = (number: string): string =>
      numberIn(Number(number), own, number.split('.')[1]?.length ?? 0);
    return `${shown(first)}${to ? ` to ${shown(to.slice(4))}` : ''}${gap}${unitName(own)}`;
  });
