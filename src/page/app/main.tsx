import { render } from 'solid-js/web';
import { App } from './app.tsx';
import '../kit/type.css';
import '../kit/base.css';
import 'virtual:uno.css';
import { watchAppearance } from '../kit/appearance.ts';
import { whenIdle } from '../kit/idle.ts';
import { watchPointer } from '../kit/pointer.ts';
import { watchPreferences } from '../kit/preferences.ts';
import { keepForOffline } from './editions.ts';

watchPointer();
watchPreferences();
watchAppearance();
render(() => <App />, document.getElementById('page')!);
// Behind the first page: what it needs now goes first.
addEventListener('load', () => whenIdle(() => void keepForOffline()));
