import { render } from 'solid-js/web';
import { App } from './app.tsx';
import './look/type.css';
import './look/tokens.css';
import './look/base.css';
import './look/frame.css';
import './look/sheet.css';
import 'virtual:uno.css';
import { watchPointer } from './state/pointer.ts';

watchPointer();
render(() => <App />, document.getElementById('page')!);
