import { render } from 'solid-js/web';
import { App } from './app.tsx';
import './look/type.css';
import './look/tokens.css';
import './look/base.css';
import './look/frame.css';
import './look/sheet.css';
import 'virtual:uno.css';
import { watchAppearance } from './preferences/appearance.ts';
import { watchPreferences } from './preferences/preferences.ts';
import { watchPointer } from './state/pointer.ts';

watchPointer();
watchPreferences();
watchAppearance();
render(() => <App />, document.getElementById('page')!);
