import '@fontsource/barlow-semi-condensed/latin-500.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import '@fontsource/barlow-semi-condensed/latin-700.css';
import './look/tokens.css';
import './look/base.css';
import './look/plates.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { scriptOf } from './connection/message-in.ts';
import { Catalogue } from './words/catalogue.svelte.ts';
import { rememberedLanguage } from './words/remembered.ts';

const target = document.getElementById('kiosk');
if (target === null) throw new Error('the page has no place for the kiosk');
const catalogue = new Catalogue();
// A kiosk that spoke Spanish yesterday does not greet in English; where the words cannot be had it does.
await catalogue.use(rememberedLanguage()).catch(() => undefined);
mount(App, { target, props: { catalogue, page: scriptOf(import.meta.url) } });
