(function () {
  var form = document.getElementById('sheet');
  var code = form.dataset.code;
  var boxes = Array.from(form.querySelectorAll('input[name="count"]'));
  var day = form.elements.namedItem('on');
  var TENTHS = 10;
  var DAYS = 7;
  var other = document.getElementById('other');
  var of = ''; /* the first day that the figures were entered for */
  var A_DAY = 24 * 60 * 60 * 1000;

  function number(box) { return box.value.trim().replace(/,(?=[0-9]{3}$)/, ''); }
  function isWrong() {
    return boxes.some(function (b) { return number(b) && !/^[0-9]{1,6}([.][0-9])?$/.test(number(b)); });
  }
  function filled() { return boxes.filter(number).length; }
  /* Last week's figures under next week's day would count the same feed twice: nothing is given back until it is said. */
  function isOfAnother() { return filled() > 0 && of !== '' && of !== day.value; }
  function iso(at) {
    return at.getFullYear() + '-' + ('0' + (at.getMonth() + 1)).slice(-2) + '-' + ('0' + at.getDate()).slice(-2);
  }
  function clear() {
    boxes.forEach(function (b) { b.value = ''; });
    of = '';
    form.dispatchEvent(new Event('input'));
  }
  function line() {
    var first = day.value.replace(/-/g, '').slice(2);
    if (!filled() || isWrong() || isOfAnother() || first.length !== 6) { return ''; }
    var all = boxes.map(function (b) { return number(b) ? String(Math.round(Number(number(b)) * TENTHS)) : ''; });
    while (!all[all.length - 1]) { all.pop(); }
    return checked([code, first].concat(all).join('-') + '-');
  }
  /* The days by name: a date alone is read as noon there, so that no clock change moves it. */
  function name() {
    other.hidden = !isOfAnother();
    Array.from(form.querySelectorAll('.day')).forEach(function (label) {
      var at = new Date(new Date(day.value + 'T12:00:00').getTime() + Number(label.dataset.day) * A_DAY);
      label.textContent = isNaN(at) ? 'Day ' + (Number(label.dataset.day) + 1)
        : at.toLocaleDateString('en-US', { weekday: 'long', month: 'short', day: 'numeric' });
    });
  }
  if (!day.value) {
    day.value = iso(new Date(Date.now() - (DAYS - 1) * A_DAY));
  }
  boxes.forEach(function (b) { b.addEventListener('input', function () { of = of || day.value; }); });
  document.getElementById('new').addEventListener('click', function () {
    var next = new Date(new Date(day.value + 'T12:00:00').getTime() + DAYS * A_DAY);
    if (!isNaN(next) && !isOfAnother()) { day.value = iso(next); }
    clear();
  });
  document.getElementById('clear').addEventListener('click', clear);
  document.getElementById('stay').addEventListener('click', function () {
    of = day.value;
    form.dispatchEvent(new Event('input'));
  });
  giveBack(form, {
    line: line,
    wanting: function () {
      return isOfAnother() ? 'Say first, at the top, whether these figures are of that week.' : isWrong() ? 'One of them is not a number with at most one figure behind the point.' : 'Enter what you have, and the first day.';
    },
    file: function () { return line() + '\n'; },
    name: 'week-' + code + '.txt',
    progress: function () { return filled() + ' entered.'; },
    data: function () { return { on: day.value, of: of, counts: boxes.map(function (b) { return b.value; }) }; },
    restore: function (left) {
      day.value = left.on || day.value;
      of = left.of || left.on || '';
      boxes.forEach(function (b, i) { b.value = left.counts[i] || ''; });
      boxes.forEach(function (b) { if (b.value) { b.closest('details').open = true; } });
    },
    shown: name
  });
})();
