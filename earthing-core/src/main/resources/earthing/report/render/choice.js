// Puts selections above a table of cases and shows the rows that fit. It computes nothing; without it all rows stand there.
document.querySelectorAll('.choice').forEach(function (box) {
  var table = box.querySelector('table');
  var rows = Array.from(table.tBodies[0].rows);
  var heads = Array.from(table.tHead.rows[0].cells).slice(0, Number(box.dataset.keys));
  var chooser = document.createElement('div');
  var told = document.createElement('output');
  chooser.className = 'chooser';
  chooser.setAttribute('role', 'group');
  chooser.setAttribute('aria-label', 'Choose among the cases: ' + table.caption.textContent);
  told.setAttribute('aria-live', 'polite');
  var selects = heads.map(function (head, key) {
    var label = document.createElement('label');
    var select = document.createElement('select');
    var words = new Set(rows.map(function (row) { return row.cells[key].textContent; }));
    ['all'].concat(Array.from(words)).forEach(function (word) { select.add(new Option(word)); });
    label.append(head.textContent, select);
    chooser.append(label);
    return select;
  });
  function fits(row, key, wanted) {
    return wanted === 'all' ? true : row.cells[key].textContent === wanted;
  }
  function show() {
    var shown = rows.filter(function (row) {
      var fit = selects.every(function (select, key) { return fits(row, key, select.value); });
      row.classList.toggle('out', !fit);
      return fit;
    });
    // What no computed case has beside the other choices cannot be chosen.
    selects.forEach(function (select, key) {
      Array.from(select.options).forEach(function (option) {
        option.disabled = !rows.some(function (row) {
          return selects.every(function (other, k) { return fits(row, k, k === key ? option.value : other.value); });
        });
      });
    });
    told.textContent = shown.length + ' of ' + rows.length + ' cases';
  }
  selects.forEach(function (select) { select.addEventListener('change', show); });
  chooser.append(told);
  box.insertBefore(chooser, box.firstChild);
  show();
});
