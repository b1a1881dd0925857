// Hides the functions that do not have all words of the search; without scripts the whole list stays.
const field = document.getElementById('search');
const found = document.getElementById('found');
function search() {
  const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
  let count = 0;
  for (const section of document.querySelectorAll('section')) {
    let shown = 0;
    for (const item of section.querySelectorAll('li')) {
      item.hidden = !words.every(word => item.dataset.words.includes(word));
      if (!item.hidden) shown += 1;
    }
    section.hidden = shown === 0;
    count += shown;
  }
  found.textContent = words.length === 0 ? '' : count === 0 ? 'No function has all these words.' : `${count} found`;
}
field.addEventListener('input', search);
field.closest('[hidden]').hidden = false;
search();
