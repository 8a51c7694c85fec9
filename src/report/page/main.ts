/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { listenForChoices } from './choices.js';
import { redrawCharts } from './chart-host.js';
import { listenForFind } from './find.js';
import { listenForNumbers } from './numbers.js';
import { listenForPrint } from './print.js';
import { listenForViews, openView } from './views.js';
import { listenForZoom } from './zoom.js';

// The page works from top to bottom without this script; the script shows one screen at a time and draws the charts.
document.documentElement.classList.add('scripted');
listenForChoices(redrawCharts);
listenForViews();
listenForFind();
listenForZoom();
listenForNumbers();
listenForPrint();
openView();
// A browser scrolls to the screen that the address names; a screen starts with the page's head in sight.
window.addEventListener('load', () => requestAnimationFrame(() => scrollTo({ top: 0, behavior: 'instant' })));
