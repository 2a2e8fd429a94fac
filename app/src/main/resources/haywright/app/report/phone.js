(function () {
  'use strict';
  var SIGNS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-';
  var form = document.getElementById('sheet');
  var state = document.getElementById('state');
  var code = form.dataset.code;
  var key = 'haywright-sheet-' + code;
  var boxes = Array.from(form.elements.namedItem('unit').length ? form.elements.namedItem('unit') : [form.elements.namedItem('unit')]);
  var cores = Array.from(form.elements.namedItem('cores').length ? form.elements.namedItem('cores') : [form.elements.namedItem('cores')]);
  var given = '';

  function value(text) {
    var v = 1;
    for (var i = 0; i < text.length; i++) { v = (2 * v + SIGNS.indexOf(text[i])) % 37; }
    return v;
  }
  function checked(text) {
    for (var digit = 0; digit < 10; digit++) {
      var sign = SIGNS[((-2 * value(text + digit)) % 37 + 37) % 37];
      if (sign >= 'A' && sign <= 'Z' && sign !== 'I' && sign !== 'O') { return text + digit + sign; }
    }
    return '';
  }
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
    var above = 'HAYWRIGHT SHEET 1\n' + line() + '\nDiffered: ' + oneLine(field('differed')) + '\nPhotos: ' + oneLine(photos) + '\n';
    return above + 'Check: ' + crc(above) + '\n';
  }
  function keep() {
    var data = { done: boxes.map(function (b) { return b.checked; }), cores: cores.map(function (c) { return c.value; }) };
    ['by', 'on', 'differed', 'photos'].forEach(function (name) { data[name] = field(name); });
    try {
      localStorage.setItem(key, JSON.stringify(data));
      say('Saved on this phone');
    } catch (e) {
      say('Not saved: this phone keeps nothing. Give the line back before you close the page, or use the paper.');
    }
  }
  function say(words) {
    var now = boxes.filter(function (b) { return b.checked; }).length;
    var text = line();
    state.textContent = words + (given ? ', ' + given : ', not given back yet') + '. ' + now + ' of ' + boxes.length + ' taken.'
      + (show() ? '' : ' Put right what is marked; until then there is no line.');
    document.getElementById('line').textContent = text || 'Tick what you took, and say who and which day.';
    document.getElementById('copy').disabled = document.getElementById('file').disabled = !text;
    var without = [];
    if (text && field('by').trim() !== initials()) { without.push('the name is ' + initials()); }
    if (text && (oneLine(field('differed')) || oneLine(field('photos')))) {
      without.push('what was different and the names of photos are left out; they are in the file');
    }
    var less = document.getElementById('less');
    less.hidden = !without.length;
    less.textContent = 'In the line ' + without.join(', and ') + '.';
  }
  function gaveBack(how) {
    given = how + ' at ' + new Date().toTimeString().slice(0, 5);
    keep();
  }
  function today() {
    var d = new Date();
    return d.getFullYear() + '-' + ('0' + (d.getMonth() + 1)).slice(-2) + '-' + ('0' + d.getDate()).slice(-2);
  }
  var words = 'Nothing entered yet';
  try {
    var left = JSON.parse(localStorage.getItem(key) || 'null');
    if (left) {
      words = 'Saved on this phone';
      boxes.forEach(function (b, i) { b.checked = Boolean(left.done[i]); });
      cores.forEach(function (c, i) { c.value = left.cores[i]; });
      ['by', 'on', 'differed', 'photos'].forEach(function (name) { form.elements.namedItem(name).value = left[name] || ''; });
    }
  } catch (e) { /* nothing kept, or kept by another program: start empty */ }
  if (!field('on')) { form.elements.namedItem('on').value = today(); }
  document.getElementById('give').hidden = false;
  say(words);
  form.addEventListener('input', function () { given = ''; keep(); });
  form.addEventListener('submit', function (e) { e.preventDefault(); });
  document.getElementById('copy').addEventListener('click', function () {
    var text = line();
    if (navigator.clipboard && window.isSecureContext) { navigator.clipboard.writeText(text).then(function () { gaveBack('line copied'); }, select); } else { select(); }
  });
  function select() {
    var range = document.createRange();
    range.selectNodeContents(document.getElementById('line'));
    var chosen = window.getSelection();
    chosen.removeAllRanges();
    chosen.addRange(range);
    say('The line is marked: copy it by hand');
  }
  document.getElementById('file').addEventListener('click', function () {
    var link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([file()], { type: 'text/plain' }));
    link.download = 'field-sheet-' + code + '.txt';
    link.click();
    gaveBack('file saved');
  });
})();
