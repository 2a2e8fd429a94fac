(function () {
  var form = document.getElementById('sheet');
  var code = form.dataset.code;
  var boxes = Array.from(form.querySelectorAll('input[name="count"]'));
  var day = form.elements.namedItem('on');
  var TENTHS = 10;
  var DAYS = 7;
  var A_DAY = 24 * 60 * 60 * 1000;

  function number(box) { return box.value.trim().replace(/,(?=[0-9]{3}$)/, ''); }
  function isWrong() {
    return boxes.some(function (b) { return number(b) && !/^[0-9]{1,6}([.][0-9])?$/.test(number(b)); });
  }
  function filled() { return boxes.filter(number).length; }
  function line() {
    var first = day.value.replace(/-/g, '').slice(2);
    if (!filled() || isWrong() || first.length !== 6) { return ''; }
    var all = boxes.map(function (b) { return number(b) ? String(Math.round(Number(number(b)) * TENTHS)) : ''; });
    while (!all[all.length - 1]) { all.pop(); }
    return checked([code, first].concat(all).join('-') + '-');
  }
  /* The days by name: a date alone is read as noon there, so that no clock change moves it. */
  function name() {
    Array.from(form.querySelectorAll('.day')).forEach(function (label) {
      var at = new Date(new Date(day.value + 'T12:00:00').getTime() + Number(label.dataset.day) * A_DAY);
      label.textContent = isNaN(at) ? 'Day ' + (Number(label.dataset.day) + 1)
        : at.toLocaleDateString('en-US', { weekday: 'long', month: 'short', day: 'numeric' });
    });
  }
  if (!day.value) {
    var first = new Date(Date.now() - (DAYS - 1) * A_DAY);
    day.value = first.getFullYear() + '-' + ('0' + (first.getMonth() + 1)).slice(-2) + '-' + ('0' + first.getDate()).slice(-2);
  }
  giveBack(form, {
    line: line,
    wanting: function () {
      return isWrong() ? 'One of them is not a number with at most one figure behind the point.' : 'Enter what you have, and the first day.';
    },
    file: function () { return line() + '\n'; },
    name: 'week-' + code + '.txt',
    progress: function () { return filled() + ' entered.'; },
    data: function () { return { on: day.value, counts: boxes.map(function (b) { return b.value; }) }; },
    restore: function (left) {
      day.value = left.on || day.value;
      boxes.forEach(function (b, i) { b.value = left.counts[i] || ''; });
      boxes.forEach(function (b) { if (b.value) { b.closest('details').open = true; } });
    },
    shown: name
  });
})();
