import '@fontsource/source-sans-3/latin-400.css';
import '@fontsource/source-sans-3/latin-600.css';
import '@fontsource/source-serif-4/latin-400.css';
import '@fontsource/source-serif-4/latin-600.css';
import '@fontsource/b612-mono/latin-400.css';
import './theme.css';
import './state/first-look.ts';
import { mount } from 'svelte';
import App from './App.svelte';
import { opening } from './state/opening.ts';

const target = document.getElementById('page');
if (!target) throw new Error('page: no element to draw in');
void opening().then((opened) => mount(App, { target, props: { opening: opened } }));
