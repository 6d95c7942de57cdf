// The 3-D view of a report: film on the sides of the sheets that face the air. Sides that face away are not drawn, so the eye looks in.
import * as THREE from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';

const page = document.documentElement;
const stage = document.getElementById('stage');
const under = document.getElementById('under');
const data = JSON.parse(document.getElementById('view-data').textContent);
const css = (name) => getComputedStyle(page).getPropertyValue(name).trim();
const unpack = (text) => Uint8Array.from(atob(text), (c) => c.charCodeAt(0)).buffer;

const low = new THREE.Vector3(...data.lowM);
const size = new THREE.Vector3(...data.sizeM);
const middle = low.clone().addScaledVector(size, 0.5);
const radius = 0.5 * size.length();

/** Places travel as shares of the box round the structure in 16 bits. */
function places(text) {
  const packed = new Uint16Array(unpack(text));
  const out = new Float32Array(packed.length);
  const lows = low.toArray(), sizes = size.toArray(), middles = middle.toArray();
  for (let i = 0; i < packed.length; i++) out[i] = lows[i % 3] + (sizes[i % 3] * packed[i]) / 65535 - middles[i % 3];
  return out;
}

const film = new Float32Array(unpack(data.filmUm));
const corners = new Uint32Array(unpack(data.corners));
const placeOf = new Uint16Array(unpack(data.place));
const positions = places(data.xyz);
const shape = new THREE.BufferGeometry();
shape.setAttribute('position', new THREE.BufferAttribute(positions, 3));
shape.setAttribute('normal', new THREE.BufferAttribute(new Int8Array(unpack(data.normals)), 3, true));
shape.setAttribute('film', new THREE.BufferAttribute(film, 1));
shape.setIndex(new THREE.BufferAttribute(corners, 1));

const ramp = new THREE.DataTexture(new Uint8Array(unpack(data.ramp)), 256, 1);
ramp.minFilter = ramp.magFilter = THREE.LinearFilter;
ramp.needsUpdate = true;
const raw = (text) => new THREE.Color().setStyle(text, THREE.LinearSRGBColorSpace);
const filmLook = new THREE.ShaderMaterial({
  uniforms: {
    ramp: { value: ramp }, lowUm: { value: data.lowUm }, highUm: { value: data.highUm }, hazeUm: { value: data.hazeUm },
    bare: { value: new THREE.Color() }, paper: { value: new THREE.Color() }, dots: { value: 1 },
  },
  vertexShader: `
    attribute float film; varying float um; varying vec3 n; varying vec3 eye;
    void main() {
      um = film; vec4 p = modelViewMatrix * vec4(position, 1.0);
      n = normalMatrix * normal; eye = -p.xyz; gl_Position = projectionMatrix * p;
    }`,
  fragmentShader: `
    uniform sampler2D ramp; uniform float lowUm, highUm, hazeUm, dots; uniform vec3 bare, paper;
    varying float um; varying vec3 n; varying vec3 eye;
    void main() {
      float at = clamp(log(max(um, 1e-9) / lowUm) / log(highUm / lowUm), 0.0, 1.0);
      vec3 c = texture2D(ramp, vec2((255.0 * at + 0.5) / 256.0, 0.5)).rgb;
      if (um < hazeUm) c = mod(gl_FragCoord.x + gl_FragCoord.y, 8.0 * dots) < 2.5 * dots ? bare : paper;
      gl_FragColor = vec4(c * (0.76 + 0.24 * abs(dot(normalize(n), normalize(eye)))), 1.0);
    }`,
});

let renderer;
try {
  renderer = new THREE.WebGLRenderer({ antialias: true, preserveDrawingBuffer: true });
} catch (e) {
  stage.innerHTML = '<p class="none">The 3-D view needs WebGL, which this browser does not offer. The tables hold the same numbers.</p>';
  page.dataset.view = 'none';
  throw e;
}
stage.prepend(renderer.domElement);
renderer.domElement.tabIndex = 0;
renderer.domElement.setAttribute('aria-label', 'Film on the inside of the structure; drag to turn');
const scene = new THREE.Scene();
const camera = new THREE.PerspectiveCamera(32, 1, radius / 200, radius * 40);
camera.up.set(0, 0, 1);
const controls = new OrbitControls(camera, renderer.domElement);
controls.enableDamping = false;
controls.listenToKeyEvents(renderer.domElement);

const skin = new THREE.Mesh(shape, filmLook);
const edges = new THREE.LineSegments(new THREE.EdgesGeometry(shape, 28), new THREE.LineBasicMaterial());
const line = (flat) => {
  const g = new THREE.BufferGeometry();
  const own = new Float32Array(flat.length);
  for (let i = 0; i < flat.length; i++) own[i] = flat[i] - middle.getComponent(i % 3);
  g.setAttribute('position', new THREE.BufferAttribute(own, 3));
  return g;
};
const seams = new THREE.Group();
const wetSeams = new THREE.LineSegments(line(data.seamsWet), new THREE.LineBasicMaterial());
const bareSeams = new THREE.LineSegments(line(data.seamsBare), new THREE.LineBasicMaterial());
seams.add(wetSeams, bareSeams);
seams.visible = false;
const wandLook = new THREE.MeshBasicMaterial();
const wands = new THREE.Group();
for (const w of data.wands) {
  for (let i = 0; i + 5 < w.line.length; i += 3) {
    const a = new THREE.Vector3(w.line[i], w.line[i + 1], w.line[i + 2]).sub(middle);
    const b = new THREE.Vector3(w.line[i + 3], w.line[i + 4], w.line[i + 5]).sub(middle);
    const rod = new THREE.Mesh(new THREE.CylinderGeometry(w.radiusM, w.radiusM, a.distanceTo(b), 10), wandLook);
    rod.position.copy(a).lerp(b, 0.5);
    rod.quaternion.setFromUnitVectors(new THREE.Vector3(0, 1, 0), b.clone().sub(a).normalize());
    wands.add(rod);
  }
}
const outline = new THREE.LineSegments(new THREE.BufferGeometry(), new THREE.LineBasicMaterial({ depthTest: false }));
outline.renderOrder = 2;
scene.add(skin, edges, seams, wands, outline);

const tags = data.places.filter((p) => p.tag).map((p) => {
  const tag = document.createElement('span');
  tag.className = 'tag';
  tag.textContent = p.label;
  stage.append(tag);
  return { tag, at: new THREE.Vector3(...p.atM).sub(middle) };
});

let waiting = false;
function draw() {
  if (waiting) return;
  waiting = true;
  requestAnimationFrame(() => {
    waiting = false;
    renderer.render(scene, camera);
    const frame = stage.getBoundingClientRect();
    const shown = document.getElementById('tags').checked;
    for (const { tag, at } of tags) {
      const p = at.clone().project(camera);
      tag.hidden = !shown || Math.abs(p.x) > 0.97 || Math.abs(p.y) > 0.95 || p.z > 1;
      tag.style.left = `${(0.5 + 0.5 * p.x) * frame.width}px`;
      tag.style.top = `${(0.5 - 0.5 * p.y) * frame.height}px`;
    }
    page.dataset.view = 'ready';
  });
}

function colours() {
  scene.background = new THREE.Color(css('--stage'));
  filmLook.uniforms.bare.value = raw(css('--bare'));
  filmLook.uniforms.paper.value = raw(css('--bare-paper'));
  edges.material.color.set(css('--quiet'));
  wetSeams.material.color.set(css('--ink'));
  bareSeams.material.color.set(css('--bare'));
  wandLook.color.set(css('--wand'));
  outline.material.color.set(css('--ink'));
  draw();
}

function fit() {
  const frame = stage.getBoundingClientRect();
  renderer.setPixelRatio(window.devicePixelRatio);
  filmLook.uniforms.dots.value = window.devicePixelRatio;
  renderer.setSize(frame.width, frame.height, false);
  camera.aspect = frame.width / frame.height;
  camera.updateProjectionMatrix();
  draw();
}

/** Looks at a point from a direction, from where the given points (seen from it) just fill the view. */
function look(at, from, points) {
  const tall = Math.tan((camera.fov * Math.PI) / 360);
  const ahead = from.clone().normalize();
  const right = new THREE.Vector3().crossVectors(camera.up, ahead).normalize();
  const up = new THREE.Vector3().crossVectors(ahead, right);
  const away = points.map((p) => p.dot(ahead) + 1.1 * Math.max(Math.abs(p.dot(right)) / (tall * camera.aspect), Math.abs(p.dot(up)) / tall));
  controls.target.copy(at);
  camera.position.copy(at).addScaledVector(ahead, Math.max(...away));
  controls.update();
  draw();
}

/** The corners of a box round the origin. */
const box = (x, y, z) => [-x, x].flatMap((a) => [-y, y].flatMap((b) => [-z, z].map((c) => new THREE.Vector3(a, b, c))));
const whole = box(...size.clone().multiplyScalar(0.5).toArray());

const views = { whole: [0.55, -0.75, 0.75], above: [0, -1e-3, 1], below: [0, -1e-3, -1], left: [0, -1, 0], aft: [1, 0, 0] };
for (const [name, from] of Object.entries(views)) {
  document.getElementById('view-' + name).addEventListener('click', () => {
    mark(0);
    look(new THREE.Vector3(), new THREE.Vector3(...from), whole);
  });
}
for (const [name, what] of [['show-wand', wands], ['show-seams', seams], ['show-edges', edges]]) {
  const tick = document.getElementById(name);
  tick.addEventListener('change', () => { what.visible = tick.checked; draw(); });
  what.visible = tick.checked;
}
document.getElementById('tags').addEventListener('change', draw);

/** Outlines a bare place and returns which way its surface looks. */
function mark(id) {
  const once = new Map();
  const facing = new THREE.Vector3();
  const p = (v) => new THREE.Vector3().fromArray(positions, 3 * v);
  for (let t = 0; id > 0 && t < placeOf.length; t++) {
    if (placeOf[t] !== id) continue;
    const c = [corners[3 * t], corners[3 * t + 1], corners[3 * t + 2]];
    facing.add(p(c[1]).sub(p(c[0])).cross(p(c[2]).sub(p(c[0]))));
    for (let k = 0; k < 3; k++) {
      const a = c[k], b = c[(k + 1) % 3];
      const key = a < b ? `${a}.${b}` : `${b}.${a}`;
      if (once.has(key)) once.delete(key); else once.set(key, [a, b]);
    }
  }
  const flat = [];
  for (const [a, b] of once.values()) flat.push(...p(a).toArray(), ...p(b).toArray());
  outline.geometry.dispose();
  outline.geometry = new THREE.BufferGeometry();
  outline.geometry.setAttribute('position', new THREE.Float32BufferAttribute(flat, 3));
  outline.visible = flat.length > 0;
  for (const b of document.querySelectorAll('.places button')) b.classList.toggle('on', +b.dataset.place === id);
  page.dataset.marked = id;
  draw();
  return facing;
}

for (const button of document.querySelectorAll('.places button')) {
  button.addEventListener('click', () => {
    const id = +button.dataset.place;
    const place = data.places.find((x) => x.id === id);
    const facing = mark(id);
    const away = camera.position.clone().sub(controls.target).normalize();
    const from = facing.lengthSq() > 0 ? facing.normalize().addScaledVector(away, 0.5) : away;
    const ball = Math.max(place.ballM, radius / 10);
    look(new THREE.Vector3(...place.atM).sub(middle), from, box(ball, ball, ball));
  });
}

const ray = new THREE.Raycaster();
const words = (um) => (um < data.hazeUm ? 'bare' : um < data.buildUm ? 'thin' : um <= data.excessUm ? 'protected' : 'excess');
renderer.domElement.addEventListener('pointermove', (e) => {
  if (e.buttons) return;
  const frame = renderer.domElement.getBoundingClientRect();
  const across = (2 * (e.clientX - frame.left)) / frame.width - 1;
  ray.setFromCamera(new THREE.Vector2(across, 1 - (2 * (e.clientY - frame.top)) / frame.height), camera);
  const hit = ray.intersectObject(skin)[0];
  if (!hit) { under.textContent = data.hint; return; }
  const v = [hit.face.a, hit.face.b, hit.face.c];
  const where = THREE.Triangle.getBarycoord(hit.point, ...v.map((i) => new THREE.Vector3().fromArray(positions, 3 * i)), new THREE.Vector3());
  const um = film[v[0]] * where.x + film[v[1]] * where.y + film[v[2]] * where.z;
  const patch = data.patches.find((p) => hit.faceIndex >= p.first && hit.faceIndex < p.first + p.count);
  const at = hit.point.clone().add(middle);
  under.textContent = `${patch.part}, ${patch.bay}: ${um < 0.1 ? 'below 0.1' : um.toPrecision(2)} \u00b5m, ${words(um)}; at `
    + `${(1e3 * at.x).toFixed(0)}, ${(1e3 * at.y).toFixed(0)}, ${(1e3 * at.z).toFixed(0)} mm`;
});

controls.addEventListener('change', draw);
window.matchMedia('(prefers-color-scheme: dark)').addEventListener('change', colours);
new ResizeObserver(fit).observe(stage);
under.textContent = data.hint;
fit();
colours();
mark(0);
look(new THREE.Vector3(), new THREE.Vector3(...views.whole), whole);
