(function () {
  var form = document.getElementById('sheet');
  var code = form.dataset.code;
  var boxes = Array.from(form.elements.namedItem('unit').length ? form.elements.namedItem('unit') : [form.elements.namedItem('unit')]);
  var cores = Array.from(form.elements.namedItem('cores').length ? form.elements.namedItem('cores') : [form.elements.namedItem('cores')]);

  var wrong = Array.from(form.querySelectorAll('.wrong'));
  function isWhole(core) { return /^[0-9]{1,2}$/.test(core.value) && Number(core.value) <= 35; }
  function isRight(i) { return !boxes[i].checked || isWhole(cores[i]); }
  function taken() {
    return cores.map(function (core, i) { return boxes[i].checked ? Number(core.value) : 0; });
  }
  function show() {
    cores.forEach(function (core, i) {
      core.disabled = !boxes[i].checked;
      wrong[i].hidden = isRight(i);
      core.setAttribute('aria-invalid', String(!isRight(i)));
    });
    return cores.every(function (core, i) { return isRight(i); });
  }
  function field(name) { return form.elements.namedItem(name).value; }
  var weights = form.elements.namedItem('weights');
  /* Weights go back in words, with the rest that was written down. */
  function differed() {
    var weighed = weights ? oneLine(weights.value) : '';
    return [oneLine(field('differed')), weighed ? oneLine(weights.parentNode.firstChild.textContent) + ': ' + weighed : ''].filter(Boolean).join('; ');
  }
  var KEPT = ['by', 'on', 'differed', 'photos'].concat(weights ? ['weights'] : []);
  function oneLine(words) { return words.replace(/\s+/g, ' ').trim(); }
  function initials() { return field('by').toUpperCase().replace(/[^A-Z0-9]/g, ''); }
  function line() {
    var who = initials();
    var day = field('on').replace(/-/g, '').slice(2);
    if (!show()) { return ''; }
    var all = taken();
    if (!who || day.length !== 6 || !all.some(function (n) { return n > 0; })) { return ''; }
    return checked([code, day, who, all.map(function (n) { return n.toString(36).toUpperCase(); }).join('')].join('-'));
  }
  function crc(text) {
    var bytes = new TextEncoder().encode(text);
    var c = 0xffffffff;
    for (var i = 0; i < bytes.length; i++) {
      c ^= bytes[i];
      for (var k = 0; k < 8; k++) { c = (c >>> 1) ^ (0xedb88320 & -(c & 1)); }
    }
    return ('0000000' + ((c ^ 0xffffffff) >>> 0).toString(16)).slice(-8);
  }
  function file() {
    var photos = field('photos').split(',').map(function (n) { return n.trim(); }).filter(Boolean).join(', ');
    var above = 'HAYWRIGHT SHEET 1\n' + line() + '\nDiffered: ' + differed() + '\nPhotos: ' + oneLine(photos) + '\n';
    return above + 'Check: ' + crc(above) + '\n';
  }
  function taking() { return boxes.filter(function (b) { return b.checked; }).length; }
  function shown(text) {
    var without = [];
    if (text && field('by').trim() !== initials()) { without.push('the name is ' + initials()); }
    if (text && (differed() || oneLine(field('photos')))) {
      without.push('what was different and photo names are left out; they are in the file');
    }
    var less = document.getElementById('less');
    less.hidden = !without.length;
    less.textContent = 'In the line ' + without.join(', and ') + '.';
  }
  giveBack(form, {
    line: line,
    wanting: function () { return 'Check what you took, and enter who and the day.'; },
    file: file,
    name: 'field-sheet-' + code + '.txt',
    progress: function () {
      return taking() + ' of ' + boxes.length + ' taken.' + (show() ? '' : ' Fix what is marked to get the line.');
    },
    data: function () {
      var data = { done: boxes.map(function (b) { return b.checked; }), cores: cores.map(function (c) { return c.value; }) };
      KEPT.forEach(function (name) { data[name] = field(name); });
      return data;
    },
    restore: function (left) {
      boxes.forEach(function (b, i) { b.checked = Boolean(left.done[i]); });
      cores.forEach(function (c, i) { c.value = left.cores[i]; });
      KEPT.forEach(function (name) { form.elements.namedItem(name).value = left[name] || ''; });
    },
    shown: shown
  });
})();
