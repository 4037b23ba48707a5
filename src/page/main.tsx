import { render } from 'solid-js/web';
import 'virtual:uno.css';

const mount = document.getElementById('page');
if (mount) render(() => <h1>Fitwright</h1>, mount);
