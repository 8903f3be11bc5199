import { render } from 'preact';
import { keepForOffline, newVersionReady } from './offline.ts';
import { exampleAddresses } from './shipped-files.ts';

function Page() {
  return (
    <main>
      <h1>Earshot</h1>
      <p>Will a radio with no battery be heard here, and what should I wind?</p>
      {newVersionReady.value && <p role="status">A new version is ready. Load the page again to use it.</p>}
      <h2>Examples</h2>
      <ul>
        {Object.entries(exampleAddresses).map(([name, address]) => (
          <li key={name}>
            <a href={address}>{name}</a>
          </li>
        ))}
      </ul>
    </main>
  );
}

const place = document.getElementById('app');
if (place) render(<Page />, place);
void keepForOffline();
