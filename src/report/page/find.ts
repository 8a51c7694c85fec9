/// <reference lib="dom" />
/// <reference lib="dom.iterable" />

/** The box above the table of zones hides the rows that do not hold what is typed. */
export function listenForFind(): void {
  const box = document.querySelector<HTMLInputElement>('#find-zone');
  const rows = [...document.querySelectorAll<HTMLTableRowElement>('#zone-rows tr')];
  const found = document.querySelector('#found');
  if (!box || !found) return;
  // Zone and machine only: a rank of 3 is not what "plate 3" asks for.
  const texts = rows.map((row) => (row.cells[1]?.textContent ?? '').toLowerCase());
  box.addEventListener('input', () => {
    const wanted = box.value.trim().toLowerCase().split(/\s+/);
    let count = 0;
    rows.forEach((row, i) => {
      row.hidden = !wanted.every((word) => texts[i]!.includes(word));
      if (!row.hidden) count++;
    });
    found.textContent = `${count} of ${rows.length}`;
  });
}
