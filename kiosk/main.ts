import './connection/plain-zod.ts';
import '@fontsource/barlow-semi-condensed/latin-500.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import '@fontsource/barlow-semi-condensed/latin-700.css';
import './look/tokens.css';
import './look/base.css';
import './look/plates.css';
import { mount } from 'svelte';
import App from './App.svelte';

const target = document.getElementById('kiosk');
if (target === null) throw new Error('the page has no place for the kiosk');
mount(App, { target });
