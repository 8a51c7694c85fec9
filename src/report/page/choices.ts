/// <reference lib="dom" />
/// <reference lib="dom.iterable" />

/** Where a browser keeps nothing (private window, file page), the choice lasts as long as the page. */
function keep(name: string, value: string): void {
  try {
    localStorage.setItem(`looselead.${name}`, value);
  } catch {
    // Nothing to do: the page shows the choice all the same.
  }
}

function kept(name: string): string | null {
  try {
    return localStorage.getItem(`looselead.${name}`);
  } catch {
    return null;
  }
}

/** °C or °F, and light or dark, as the reader chooses; kept for the next report on this device. */
export function listenForChoices(changed: () => void): void {
  const root = document.documentElement;
  const units = document.querySelectorAll<HTMLInputElement>('input[name="unit"]');
  const theme = document.querySelector<HTMLSelectElement>('#theme');
  const show = (unit: string, colours: string): void => {
    root.dataset['unit'] = unit;
    root.dataset['theme'] = colours;
    changed();
  };
  const now = (): [string, string] => [
    [...units].find((input) => input.checked)?.value ?? 'degC',
    theme?.value ?? 'auto',
  ];
  for (const input of units) {
    input.checked = input.value === (kept('unit') ?? 'degC');
    input.addEventListener('change', () => {
      keep('unit', input.value);
      show(...now());
    });
  }
  if (theme) {
    theme.value = kept('theme') ?? 'auto';
    if (theme.value === '') theme.value = 'auto';
    theme.addEventListener('change', () => {
      keep('theme', theme.value);
      show(...now());
    });
  }
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', changed);
  show(...now());
}
