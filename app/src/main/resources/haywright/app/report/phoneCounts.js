(function () {
  var form = document.getElementById('sheet');
  var code = form.dataset.code;
  var scale = Number(form.dataset.scale);
  var boxes = Array.from(form.querySelectorAll('input[name="count"]'));
  var day = form.elements.namedItem('on');

  function typed() {
    return boxes.map(function (box) { return box.value.trim().replace(/,(?=[0-9]{3}$)/, ''); }).filter(Boolean);
  }
  function isWrong() { return typed().some(function (t) { return !/^[0-9]{1,6}([.][0-9]+)?$/.test(t); }); }
  function line() {
    var on = day.value.replace(/-/g, '').slice(2);
    var all = typed();
    if (!all.length || isWrong() || on.length !== 6) { return ''; }
    var numbers = all.map(function (t) { return Math.round(Number(t) * scale); });
    return checked([code, on].concat(numbers).join('-') + '-');
  }
  giveBack(form, {
    line: line,
    wanting: function () { return isWrong() ? 'One of them is not a number.' : 'Enter what you have, and the day.'; },
    file: function () { return line() + '\n'; },
    name: 'sheet-' + code + '.txt',
    progress: function () { return typed().length + ' of ' + boxes.length + ' entered.'; },
    data: function () { return { on: day.value, counts: boxes.map(function (b) { return b.value; }) }; },
    restore: function (left) {
      day.value = left.on || '';
      boxes.forEach(function (b, i) { b.value = left.counts[i] || ''; });
    },
    shown: function () {}
  });
})();
