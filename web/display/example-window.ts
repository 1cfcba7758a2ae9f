export { isExampleWindow } from '../../engine/scenario/example-window.ts';

export const EXAMPLE_WORDS = 'example, replace. Not for use on a car';
