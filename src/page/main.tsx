import { render } from 'solid-js/web';
import { App } from './app.tsx';
import './look/type.css';
import './look/tokens.css';
import './look/base.css';
import './look/link-button.css';
import './look/frame.css';
import './look/sheet.css';
import 'virtual:uno.css';
import { keepForOffline } from './offline/editions.ts';
import { watchAppearance } from './preferences/appearance.ts';
import { watchPreferences } from './preferences/preferences.ts';
import { whenIdle } from './state/idle.ts';
import { watchPointer } from './state/pointer.ts';

watchPointer();
watchPreferences();
watchAppearance();
render(() => <App />, document.getElementById('page')!);
// Behind the first page: what it needs now goes first.
addEventListener('load', () => whenIdle(() => void keepForOffline()));
