// One place for the view library: `html` makes elements of a template, signals redraw what read them.
import { h, render, Fragment } from "./vendor/preact.js";
import htm from "./vendor/htm.js";
import { signal, computed, effect, batch, useSignal } from "./vendor/signals.js";
import { useEffect, useLayoutEffect, useRef } from "./vendor/preact-hooks.js";

export const html = htm.bind(h);
export { render, Fragment, signal, computed, effect, batch, useSignal, useEffect, useLayoutEffect, useRef };
