export { compute } from '../flat-plate/case.ts';
