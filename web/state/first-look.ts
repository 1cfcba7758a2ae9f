/** Gives the page the look that was chosen last. A script of its own (`vite.config.ts`), without which nothing is drawn. */
import { applyLook, followSystem, storedPrefs, type Theme } from './look.ts';

const { theme, gloves } = storedPrefs();
applyLook({ theme: String(theme) as Theme, gloves: gloves === true });
followSystem();
