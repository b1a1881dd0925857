// A trial of the rule of CRIMPCAUSE, written before src/core/quality/causes and independent of it: dense columns over the crimps, one file.
// It holds the rule (prepare … decide), what is reported (report, next), simulated books with planted causes (book), and the rule that
// CRIMPCAUSE followed before (today). Kept to hold the product against it, book by book, and for the benchmark `causes`.
// Part of this project, under its licence; invented data only.
// ---------- the rule: fewest causes that explain the crimps ----------
export const P = {
  tau: 0.05,
  kappa: 1,
  kappaX: 2,
  nu0: 2,
  s0: 0.3,
  width: 10,
  kmax: 14,
  boundaries: 60,
  pool: 12,
  sure: 0.95,
  agree: 0.25,
  act: 0.5,
  cost: { M: 1.4, MT: 2.8, C: 1.4, D: 2.8, DT: 4, X: 4 },
};
const median = a => {
  const s = [...a].sort((x, y) => x - y),
    h = s.length >> 1;
  return s.length % 2 ? s[h] : (s[h - 1] + s[h]) / 2;
};
const Phi = z => {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const p =
    1 -
    (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
      t *
      (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z >= 0 ? p : 1 - p;
};

export function prepare(rows, tol, p = P) {
  const dated = rows.length > 0 && rows.every(r => r.t !== undefined && r.t !== null);
  const order = rows.map((r, i) => i);
  if (dated) order.sort((a, b) => rows[a].t - rows[b].t || a - b);
  const R = order.map(i => rows[i]),
    n = R.length;
  const names = [...new Set(rows.map(r => r.c))],
    cOf = new Map(names.map((x, i) => [x, i]));
  const hasDie = rows.every(r => r.g !== undefined && r.g !== null && r.g !== '');
  const dies = hasDie ? [...new Set(rows.map(r => r.g))] : [],
    gOf = new Map(dies.map((x, i) => [x, i]));
  const c = Int32Array.from(R, r => cOf.get(r.c)),
    g = hasDie ? Int32Array.from(R, r => gOf.get(r.g)) : null;
  const y = Float64Array.from(R, r => r.d / tol),
    t = dated ? Float64Array.from(R, r => r.t) : null;
  const by = names.map(() => []);
  for (let i = 0; i < n; i++) by[c[i]].push(i);
  // scatter from successive differences within a combination, winsorised at 3 robust sigmas
  const diffs = [];
  for (const b of by) for (let k = 1; k < b.length; k++) diffs.push(Math.abs(y[b[k]] - y[b[k - 1]]) / Math.SQRT2);
  let cap = Infinity;
  if (diffs.length >= 6) cap = 3 * Math.max(1.4826 * median(diffs), 0.02);
  const s2 = (p.nu0 * p.s0 ** 2 + diffs.reduce((s, d) => s + Math.min(d, cap) ** 2, 0)) / (p.nu0 + diffs.length);
  return { rows, order, R, n, names, dies, c, g, y, t, by, s2, df: n - names.length };
}

function candidates(A, p, focus) {
  const { n, names, dies, c, g, y, t, by, s2 } = A,
    out = [];
  const add = (kind, o, fn, k2) => {
    const x = new Float64Array(n);
    for (let i = 0; i < n; i++) x[i] = fn(i);
    out.push({ kind, ...o, x, k2: k2 / s2 });
  };
  const K2 = p.kappa ** 2;
  add('M', { now: 1 }, () => 1, K2);
  names.forEach((_, k) => add('C', { k }, i => (c[i] === k ? 1 : 0), K2));
  if (dies.length > 1) dies.forEach((_, k) => add('D', { k, now: 1 }, i => (g[i] === k ? 1 : 0), K2));
  if (t) {
    let bs = [];
    for (let i = 1; i < n; i++) if (t[i] > t[i - 1]) bs.push(i); // i = first crimp after the boundary
    const full = bs;
    if (bs.length > p.boundaries) {
      const pick = [];
      for (let q = 1; q <= p.boundaries; q++) {
        const want = (q * n) / (p.boundaries + 1);
        pick.push(bs.reduce((a, b) => (Math.abs(b - want) < Math.abs(a - want) ? b : a)));
      }
      bs = [...new Set(pick)];
      A.thinned = true;
      if (focus) {
        const reach = n / (p.boundaries + 1);
        bs = [
          ...new Set([
            ...bs.filter((_, q) => q % 2),
            ...full.filter(b => focus.some(f => Math.abs(b - f) <= reach)).slice(0, 2 * p.boundaries),
          ]),
        ].sort((x, y) => x - y);
      }
    }
    A.bs = bs;
    const end = t[n - 1],
      distinctAfter = b => bs.filter(x => x >= b).length + 1;
    for (const b of bs)
      if (b >= 2 && n - b >= 2) {
        add('Ma', { b, now: 1 }, i => (i >= b ? 1 : 0), K2);
        add('Mb', { b, now: 0 }, i => (i < b ? 1 : 0), K2);
      }
    for (const b of [0, ...bs]) {
      const t0 = t[b];
      if (distinctAfter(b + (b ? 0 : 1)) >= 3 && n - b >= 4 && end > t0)
        add('Mr', { b, now: 1 }, i => (i >= b && t[i] > t0 ? (t[i] - t0) / (end - t0) : 0), K2);
    }
    for (const b of bs) {
      const t1 = t[b - 1];
      if (bs.filter(x => x < b).length >= 2 && b >= 4 && n - b >= 2)
        add('Mu', { b, now: 0 }, i => (i < b ? (t[i] - t[0]) / (t1 - t[0]) : 0), K2);
    }
    if (dies.length > 1)
      dies.forEach((_, k) => {
        const mine = [];
        for (let i = 0; i < n; i++) if (g[i] === k) mine.push(i);
        let last = -1;
        for (const b of [0, ...bs]) {
          const after = mine.filter(i => i >= b),
            before = mine.length - after.length;
          if (b > 0 && before >= 2 && after.length >= 2 && after.length !== last) {
            add('Da', { k, b, now: 1 }, i => (g[i] === k && i >= b ? 1 : 0), K2);
          }
          if (after.length >= 4 && end > t[b] && after.length !== last) {
            const t0 = t[b];
            add('Dr', { k, b, now: 1 }, i => (g[i] === k && t[i] > t0 ? (t[i] - t0) / (end - t0) : 0), K2);
          }
          last = after.length;
        }
      });
  }
  // single crimps that stand far from the neighbours of their own combination
  const far = [];
  for (const b of by)
    b.forEach((i, q) => {
      if (b.length < 2) {
        return;
      }
      const near = b.filter((j, r) => j !== i && Math.abs(r - q) <= 2).map(j => y[j]);
      const dist = Math.abs(y[i] - median(near)) / Math.sqrt(s2);
      if (dist > 3.5) far.push([dist, i]);
    });
  far.sort((a, b) => b[0] - a[0]);
  for (const [, i] of far.slice(0, 40)) add('X', { i }, q => (q === i ? 1 : 0), p.kappaX ** 2);
  const N = {};
  for (const o of out) {
    const f = o.kind === 'M' ? 'M' : o.kind[0] === 'M' ? 'MT' : o.kind === 'D' ? 'D' : o.kind[0] === 'D' ? 'DT' : o.kind;
    o.f = f;
    o.fam = o.b === 0 ? f + '0' : f;
    N[o.fam] = (N[o.fam] || 0) + 1;
  }
  N.X = n;
  for (const o of out) o.cost = 2 * Math.log(N[o.fam]) + p.cost[o.f] + (o.fam === 'MT0' ? 1.4 : 0);
  return out;
}

function engine(A, cand, p) {
  const { n, y, c, by, s2 } = A,
    m = cand.length,
    rho = p.tau ** 2 / s2;
  const w = by.map(b => rho / (1 + b.length * rho));
  const whiten = x => {
    const S = new Float64Array(by.length),
      z = new Float64Array(n);
    for (let i = 0; i < n; i++) S[c[i]] += x[i];
    for (let i = 0; i < n; i++) z[i] = x[i] - w[c[i]] * S[c[i]];
    return z;
  };
  const dot = (a, b) => {
    let s = 0;
    for (let i = 0; i < n; i++) s += a[i] * b[i];
    return s;
  };
  const zy = whiten(y),
    yy = dot(y, zy),
    r = Float64Array.from(cand, o => dot(o.x, zy));
  const diag = Float64Array.from(cand, o => {
    let s = 0;
    const S = new Float64Array(by.length);
    for (let i = 0; i < n; i++) {
      s += o.x[i] ** 2;
      S[c[i]] += o.x[i];
    }
    for (let k = 0; k < by.length; k++) s -= w[k] * S[k] ** 2;
    return s;
  });
  const cols = new Map();
  const col = j => {
    let v = cols.get(j);
    if (!v) {
      const z = whiten(cand[j].x);
      v = Float64Array.from(cand, o => dot(o.x, z));
      cols.set(j, v);
    }
    return v;
  };
  const base = p.nu0 * p.s0 ** 2;
  // Cholesky of X'X + diag(1/k2); returns L, z = L^-1 X'y
  const solve = T => {
    const k = T.length,
      L = [],
      z = [];
    let ld = 0,
      q = yy,
      cost = 0;
    for (let a = 0; a < k; a++) {
      const ca = col(T[a]),
        row = new Float64Array(k);
      for (let b = 0; b <= a; b++) {
        let s = ca[T[b]] + (a === b ? 1 / cand[T[a]].k2 : 0);
        const Lb = a === b ? row : L[b];
        for (let e = 0; e < b; e++) s -= row[e] * Lb[e];
        if (a === b) {
          row[a] = Math.sqrt(Math.max(s, 1e-12));
        } else row[b] = s / L[b][b];
      }
      let s = r[T[a]];
      for (let e = 0; e < a; e++) s -= row[e] * z[e];
      L.push(row);
      z.push(s / row[a]);
      ld += 2 * Math.log(row[a]) + Math.log(cand[T[a]].k2);
      q -= z[a] ** 2;
      cost += cand[T[a]].cost;
    }
    return { L, z, ld, q, cost };
  };
  const score = (q, ld, cost) => (n + p.nu0) * Math.log(base + Math.max(q, 0)) + ld + cost;
  const scan = (T, each) => {
    const S = solve(T),
      k = T.length,
      C = T.map(col),
      v = new Float64Array(k);
    for (let j = 0; j < m; j++) {
      let d = diag[j] + 1 / cand[j].k2,
        rj = r[j];
      for (let a = 0; a < k; a++) {
        let s = C[a][j];
        for (let e = 0; e < a; e++) s -= S.L[a][e] * v[e];
        v[a] = s / S.L[a][a];
        d -= v[a] ** 2;
        rj -= v[a] * S.z[a];
      }
      if (d < 1e-9) continue;
      each(j, score(S.q - (rj * rj) / d, S.ld + Math.log(d * cand[j].k2), S.cost + cand[j].cost));
    }
  };
  const value = T => {
    const S = solve(T);
    return score(S.q, S.ld, S.cost);
  };
  const estimate = T => {
    const S = solve(T),
      k = T.length,
      b = new Float64Array(k);
    for (let a = k - 1; a >= 0; a--) {
      let s = S.z[a];
      for (let e = a + 1; e < k; e++) s -= S.L[e][a] * b[e];
      b[a] = s / S.L[a][a];
    }
    const sig2 = (base + Math.max(S.q, 0)) / (n + p.nu0);
    return { b, S, sig2 };
  };
  const variance = (S, sig2, cvec) => {
    const k = cvec.length,
      u = new Float64Array(k);
    let s2_ = 0;
    for (let a = 0; a < k; a++) {
      let s = cvec[a];
      for (let e = 0; e < a; e++) s -= S.L[a][e] * u[e];
      u[a] = s / S.L[a][a];
      s2_ += u[a] ** 2;
    }
    return sig2 * s2_;
  };
  return { scan, value, estimate, variance };
}

const fits = (T, j, cand, G) => {
  const o = cand[j];
  let mt = 0,
    dt = 1;
  for (const q of T) {
    if (q === j) return false;
    const e = cand[q];
    if (e.f === 'MT') mt++;
    if (e.f === 'D') dt++;
    if (e.f === 'DT' && o.f === 'DT' && e.k === o.k) return false;
    if (
      (o.kind === 'M' && e.kind === 'Mb') ||
      (o.kind === 'Mb' && (e.kind === 'M' || e.kind === 'Mb')) ||
      (o.kind === 'X' && e.kind === 'X' && e.i === o.i)
    )
      return false;
  }
  return !(o.f === 'MT' && mt >= 4) && !(o.f === 'D' && dt >= G);
};

export function analyse(rows, tol, p = P, focus = null) {
  const A = prepare(rows, tol, p),
    { names, dies } = A;
  if (names.length < 3 || A.df < 3) return { finding: 'NOT ENOUGH DATA', machine: { sure: false }, combos: [], dies: [] };
  const cand = candidates(A, p, focus),
    E = engine(A, cand, p);
  const pool = new Map(),
    key = T => T.join(',');
  let best = Infinity,
    bestT = [];
  const note = (T, s) => {
    if (s > best + p.pool) return;
    const k = key(T);
    if (!pool.has(k)) pool.set(k, { T, s });
    if (s < best) {
      best = s;
      bestT = T;
    }
  };
  const sig = T =>
    T.map(j => cand[j].kind + (cand[j].k ?? ''))
      .sort()
      .join();
  const plus = (T, j) => [...T, j].sort((a, b) => a - b);
  note([], E.value([]));
  let beam = [{ T: [], s: best }],
    stale = 0;
  for (let k = 0; k < p.kmax && stale < 2; k++) {
    const next = new Map(),
      before = best;
    for (const { T } of beam) {
      E.scan(T, (j, s) => {
        if (!fits(T, j, cand, dies.length)) return;
        if (s > best + 40 && next.size > 400) return;
        const U = plus(T, j),
          kk = key(U);
        if (!next.has(kk)) next.set(kk, { T: U, s });
        note(U, s);
      });
    }
    const sorted = [...next.values()].sort((a, b) => a.s - b.s),
      seen = new Map();
    beam = [];
    for (const e of sorted) {
      const q = sig(e.T),
        m = seen.get(q) || 0;
      if (m >= 1) continue;
      seen.set(q, m + 1);
      beam.push(e);
      if (beam.length >= p.width) break;
    }
    if (!beam.length) break;
    stale = best < before - 1e-9 ? 0 : stale + 1;
  }
  // exchange: drop one, add one; also plain dropping, from the best few
  for (let round = 0; round < 6; round++) {
    const start = best,
      top = [...pool.values()].sort((a, b) => a.s - b.s),
      seen = new Set(),
      few = [];
    for (const e of top) {
      const q = sig(e.T);
      if (seen.has(q)) continue;
      seen.add(q);
      few.push(e);
      if (few.length >= 4) break;
    }
    for (const { T } of few)
      for (let a = 0; a < T.length; a++) {
        const U = T.filter((_, q) => q !== a);
        note(U, E.value(U));
        E.scan(U, (j, s) => {
          if (fits(U, j, cand, dies.length) && s <= best + p.pool) note(plus(U, j), s);
        });
      }
    if (best >= start - 1e-9) break;
  }
  if (A.thinned && !focus) {
    const used = new Set(bestT.map(j => cand[j].b).filter(b => b > 0));
    if (used.size) return analyse(rows, tol, p, [...used]);
  }
  const models = [...pool.values()]
    .filter(e => e.s <= best + p.pool)
    .sort((a, b) => a.s - b.s)
    .slice(0, 2000);
  let W = 0;
  const K = names.length,
    G = dies.length;
  const info = models.map(e => {
    const { b, S, sig2 } = E.estimate(e.T);
    let m = 0;
    const cv = e.T.map(() => 0),
      sC = new Float64Array(K),
      vC = new Float64Array(K),
      sD = new Float64Array(G),
      vD = new Float64Array(G),
      inC = new Map(),
      inD = new Map();
    e.T.forEach((j, a) => {
      const o = cand[j];
      if (o.kind[0] === 'M') {
        m += o.now * b[a];
        cv[a] = o.now;
      }
      if (o.kind === 'C') {
        sC[o.k] += b[a];
        inC.set(o.k, [a]);
      }
      if (o.kind[0] === 'D') {
        sD[o.k] += b[a];
        inD.set(o.k, [...(inD.get(o.k) || []), a]);
      }
    });
    for (const [k, as] of inC) {
      const q = e.T.map(() => 0);
      as.forEach(a => (q[a] = 1));
      vC[k] = E.variance(S, sig2, q);
    }
    for (const [k, as] of inD) {
      const q = e.T.map(() => 0);
      as.forEach(a => (q[a] = 1));
      vD[k] = E.variance(S, sig2, q);
    }
    const w = Math.exp(-(e.s - best) / 2);
    W += w;
    return { T: e.T, s: e.s, fit: e.s - S.cost, w, m, vM: E.variance(S, sig2, cv), sC, vC, sD, vD };
  });
  for (const e of info) e.w /= W;
  const top = info[0];
  const reach = (mean, v) =>
    v > 0 ? 1 - Phi((p.act - mean) / Math.sqrt(v)) + Phi((-p.act - mean) / Math.sqrt(v)) : Math.abs(mean) >= p.act ? 1 : 0;
  const mix = f => info.reduce((s, e) => s + e.w * f(e), 0);
  const pM = mix(e => (Math.abs(e.m - top.m) <= p.agree ? 1 : 0));
  const within = e => {
    const sd = Math.sqrt(e.vM);
    if (!(sd > 0)) return Math.abs(e.m - top.m) <= p.agree ? 1 : 0;
    return Phi((top.m + p.agree - e.m) / sd) - Phi((top.m - p.agree - e.m) / sd);
  };
  const pMq = mix(within);
  return {
    A,
    cand,
    pMq,
    info,
    top,
    best,
    pM,
    K,
    G,
    pC: names.map((_, k) => mix(e => (Math.abs(e.sC[k]) >= p.act ? 1 : 0))),
    pCx: names.map((_, k) => mix(e => reach(e.sC[k], e.vC[k]))),
    pD: dies.map((_, k) => mix(e => (Math.abs(e.sD[k]) >= p.act ? 1 : 0))),
    pDx: dies.map((_, k) => mix(e => reach(e.sD[k], e.vD[k]))),
    pMx: mix(e => reach(e.m, e.vM)),
    names,
    dies,
    text: top.T.map(j => {
      const o = cand[j];
      return (
        o.kind +
        (o.kind === 'C' ? names[o.k] : o.kind[0] === 'D' ? dies[o.k] : '') +
        (o.b !== undefined ? '@' + (A.t ? A.t[o.b] : '') : '') +
        (o.i !== undefined ? '#' + A.order[o.i] : '')
      );
    }),
  };
}

// ---------- what is reported of the best explanation: plain least squares, interval with the pooled scatter ----------
export function report(a, tQ, conf = 0.95) {
  const { A, cand, top } = a,
    { n, c, y } = A,
    T = top.T.map(j => cand[j]),
    out = new Set(T.filter(o => o.kind === 'X').map(o => o.i)),
    own = new Set(T.filter(o => o.kind === 'C').map(o => o.k));
  const use = [];
  for (let i = 0; i < n; i++) if (!out.has(i) && !own.has(c[i])) use.push(i);
  const terms = T.filter(o => o.kind !== 'X' && o.kind !== 'C' && o.kind !== 'M'),
    cols = [Float64Array.from(use, () => 1), ...terms.map(o => Float64Array.from(use, i => o.x[i]))],
    yy = Float64Array.from(use, i => y[i]);
  const ls = (cols, yy) => {
    const L = [],
      z = [],
      keep = [];
    cols.forEach((x, q) => {
      const row = [];
      for (let e = 0; e < keep.length; e++) {
        let s = 0;
        const w = cols[keep[e]];
        for (let i = 0; i < x.length; i++) s += x[i] * w[i];
        for (let f = 0; f < e; f++) s -= row[f] * L[e][f];
        row.push(s / L[e][e]);
      }
      let d = 0,
        g = 0;
      for (let i = 0; i < x.length; i++) {
        d += x[i] * x[i];
        g += x[i] * yy[i];
      }
      const d0 = d;
      for (let f = 0; f < row.length; f++) {
        d -= row[f] ** 2;
        g -= row[f] * z[f];
      }
      if (d < 1e-9 * (d0 + 1e-9)) return;
      row.push(Math.sqrt(d));
      L.push(row);
      z.push(g / Math.sqrt(d));
      keep.push(q);
    });
    const k = keep.length,
      b = new Float64Array(k);
    for (let e = k - 1; e >= 0; e--) {
      let s = z[e];
      for (let f = e + 1; f < k; f++) s -= L[f][e] * b[f];
      b[e] = s / L[e][e];
    }
    let rss = 0;
    for (let i = 0; i < yy.length; i++) {
      let s = yy[i];
      for (let e = 0; e < k; e++) s -= b[e] * cols[keep[e]][i];
      rss += s * s;
    }
    return {
      b,
      rss,
      keep,
      quad: v => {
        let s = 0;
        const u = [];
        for (let e = 0; e < k; e++) {
          let q = v[keep[e]];
          for (let f = 0; f < e; f++) q -= L[e][f] * u[f];
          u.push(q / L[e][e]);
          s += u[e] ** 2;
        }
        return s;
      },
    };
  };
  const F = ls(cols, yy),
    v = [1, ...terms.map(o => (o.kind[0] === 'M' ? o.now : 0))];
  const S = new Map();
  use.forEach((i, q) => {
    const e = S.get(c[i]) || [0, new Float64Array(cols.length + 1)];
    e[0]++;
    cols.forEach((x, w) => (e[1][w] += x[q]));
    e[1][cols.length] += yy[q];
    S.set(c[i], e);
  });
  const centre = (x, w) => x.map((val, q) => val - S.get(c[use[q]])[1][w] / S.get(c[use[q]])[0]);
  const Wf = ls(
      cols.slice(1).map((x, w) => centre(x, w + 1)),
      centre(yy, cols.length),
    ),
    df = use.length - S.size - Wf.keep.length,
    s = df > 0 ? Math.sqrt(Wf.rss / df) : NaN;
  let m = 0;
  F.keep.forEach((q, e) => (m += F.b[e] * v[q]));
  const half = tQ((1 + conf) / 2, df) * s * Math.sqrt(F.quad(v));
  return { m, half, s, df };
}
// ---------- what to measure next: the crimp whose outcome the best explanation and its rivals predict most differently ----------
export function next(a, p = P, delta = 6) {
  const { top, info, A } = a,
    sets = e =>
      [...e.sC].map((s, k) => (Math.abs(s) >= p.act ? 'C' + k : '')).join('') +
      [...e.sD].map((s, k) => (Math.abs(s) >= p.act ? 'D' + k : '')).join('');
  const rivals = info.filter(
    e =>
      (e.s <= top.s + delta || (e.T.length <= top.T.length && e.fit <= top.fit + delta)) &&
      (Math.abs(e.m - top.m) > p.agree || sets(e) !== sets(top)),
  );
  if (!rivals.length) return null;
  const made = new Map();
  A.R.forEach((r, i) => {
    const g = A.g ? A.g[i] : -1;
    made.set(A.c[i] + '/' + g, [A.c[i], g]);
  });
  const pred = (e, k, g) => e.m + e.sC[k] + (g >= 0 ? e.sD[g] : 0);
  const choose = list => {
    let b = null;
    for (const [k, g] of list) {
      let gain = 0,
        d = 0;
      for (const e of rivals) {
        const x = Math.abs(pred(top, k, g) - pred(e, k, g));
        if (x >= 0.35) {
          gain += e.w;
          d = d ? Math.min(d, x) : x;
        }
      }
      if (gain > 0 && (!b || gain > b.gain + 1e-9)) b = { k, g, gain, d };
    }
    return b;
  };
  let b = choose(made.values()),
    other = false;
  if (!b && A.g) {
    const all = [];
    for (let k = 0; k < a.K; k++) for (let g = 0; g < a.G; g++) all.push([k, g]);
    b = choose(all);
    other = true;
  }
  if (!b) {
    const [k, g] = made.values().next().value;
    b = { k, g, d: 0.35 };
  } // the explanations differ in size only: more crimps of any
  return { ...b, other, crimps: Math.min(12, Math.max(2, Math.ceil(A.s2 * (3.5 / b.d) ** 2))), rivals };
}

export const Q = { inSure: 0.95, fineC: 0.05, fineD: 0.03, mFine: 0.25, mq: 0.85, delta: 6, pm: 0.95 };
export function decide(a) {
  if (a.finding === 'NOT ENOUGH DATA')
    return { mSure: false, blank: true, C: new Map(), D: new Map(), Cu: new Set(), Du: new Set() };
  const out = { C: new Map(), D: new Map(), Cu: new Set(), Du: new Set() };
  const m = a.top.m;
  out.m = Math.abs(m) >= 0.5 ? m : 0;
  const unstable = a.top.T.filter(j => a.cand[j].f === 'MT').length >= 4;
  out.mSure = !unstable && a.pM >= Q.pm && a.pMq >= Q.mq && (out.m !== 0 || a.pMx <= Q.mFine);
  // no kind of cause is preferred among explanations of as many causes that fit as well
  const rivals = a.info.filter(e => e.T.length <= a.top.T.length && e.fit <= a.top.fit + Q.delta);
  if (rivals.some(e => Math.abs(e.m - m) > 0.25)) out.mSure = false;
  const differs = (f, k, v) => rivals.some(e => Math.abs(e[f][k]) >= 0.5 !== v && Math.abs(e[f][k] - a.top[f][k]) > 0.25);
  a.names.forEach((x, k) => {
    const own = a.pC[k] >= Q.inSure && a.A.by[k].length >= 2;
    if (differs('sC', k, own)) out.Cu.add(x);
    else if (own) out.C.set(x, a.top.sC[k]);
    else if (a.pCx[k] > Q.fineC) out.Cu.add(x);
  });
  a.dies.forEach((x, k) => {
    const off = a.pD[k] >= Q.inSure;
    if (differs('sD', k, off)) out.Du.add(x);
    else if (off) out.D.set(x, a.top.sD[k]);
    else if (a.pDx[k] > Q.fineD) out.Du.add(x);
  });
  if (!out.mSure) {
    out.blank = true;
    out.C.clear();
    out.D.clear();
    out.Cu.clear();
    out.Du.clear();
  }
  return out;
}

export function rng(seed) {
  let s = seed >>> 0;
  return () => {
    s = (s + 0x6d2b79f5) >>> 0;
    let t = s;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
export const normal = r => {
  let u = 0;
  while (u === 0) u = r();
  return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * r());
};
// sizes: combos, crimps, working days, dies
export const SIZES = { ample: [30, 400, 40, 5], small: [5, 30, 5, 2], thin: [0, 0, 5, 2] };
const day = i => Math.floor(i / 5) * 7 + (i % 5);
export function book(size, scen, seed, o = {}) {
  const r = rng(seed),
    eff = () => (r() < 0.5 ? -1 : 1) * (0.6 + 0.9 * r());
  let [K, n, days, G] = SIZES[size];
  if (size === 'thin') {
    K = 3 + Math.floor(r() * 3);
  }
  if (/die/.test(scen) && size !== 'ample' && !o.twoDies) {
    K = 5;
    G = 3;
  }
  const campaign = /campaign/.test(scen),
    sig = o.sigma ?? 0.15 + 0.3 * r(),
    tau = o.tau ?? 0.05;
  let plan = [];
  if (size === 'thin') {
    for (let k = 0; k < K; k++) for (let q = 2 + Math.floor(r() * 2); q--;) plan.push(k);
    for (let i = plan.length - 1; i > 0; i--) {
      const j = Math.floor(r() * (i + 1));
      [plan[i], plan[j]] = [plan[j], plan[i]];
    }
    if (campaign) plan.sort((a, b) => a - b);
    n = plan.length;
  } else
    for (let i = 0; i < n; i++) {
      let k = campaign ? Math.floor((i / n) * K * 0.999 + ((r() - 0.5) * 6 * K) / 30) : Math.floor(r() * K);
      plan.push(Math.max(0, Math.min(K - 1, k)));
    }
  const dieOf = k => Math.floor((k * G) / K),
    own = Array.from({ length: K }, () => tau * normal(r));
  const present = [...new Set(plan)].filter(k => plan.filter(x => x === k).length >= 1);
  const pick = () => present[Math.floor(r() * present.length)];
  let M = () => 0,
    S = new Map(),
    D = new Map();
  const at = Math.floor(days * (0.25 + 0.5 * r())) || 1;
  const dlast = days - 1;
  const base = scen.replace(/ campaign/, '');
  const pickDie = () => (size === 'ample' ? dieOf(pick()) : Math.floor(r() * 2));
  if (base === 'machine') {
    const e = eff();
    M = () => e;
  }
  if (base === 'setting') S.set(pick(), eff());
  if (base === 'machine+setting') {
    const e = eff();
    M = () => e;
    S.set(pick(), eff());
  }
  if (base === 'shift') {
    const e = eff();
    M = d => (d >= at ? e : 0);
  }
  if (base === 'drift') {
    const e = eff();
    M = d => (e * d) / dlast;
  }
  if (base === 'recal') {
    const e = eff(),
      mid = Math.round(days / 2);
    M = d => (d < mid ? e : 0);
  }
  if (base === 'drift-recal') {
    const e = eff(),
      mid = Math.round(days * 0.6);
    M = d => (d < mid ? (e * d) / mid : 0);
  }
  if (base === 'die') {
    const e = eff();
    D.set(pickDie(), () => e);
  }
  if (base === 'two dies') {
    const e = eff(),
      f = Math.sign(e) * (0.6 + 0.9 * r());
    const a = pickDie();
    let b = pickDie(),
      g = 0;
    while (b === a && g++ < 99) b = pickDie();
    D.set(a, () => e);
    D.set(b, () => f);
  }
  if (base === 'die wears') {
    const e = eff();
    D.set(pickDie(), d => (e * d) / dlast);
  }
  if (base === 'shift+setting') {
    const e = eff();
    M = d => (d >= at ? e : 0);
    S.set(pick(), eff());
  }
  if (base === 'die+machine') {
    const e = eff(),
      f = eff();
    M = () => e;
    D.set(pickDie(), () => f);
  }
  const dEnd = Math.floor(((n - 1) * days) / n);
  const rows = plan.map((k, i) => {
    const d = Math.floor((i * days) / n),
      g = dieOf(k);
    const v = M(d) + (S.get(k) || 0) + (D.has(g) ? D.get(g)(d) : 0) + own[k] + sig * normal(r);
    return { c: 'C' + k, g: 'D' + g, t: day(d), d: Math.round(v * 50) / 50 };
  });
  if (o.bare)
    for (const x of rows) {
      delete x.t;
      delete x.g;
    }
  return {
    rows,
    sig,
    more: (c, g, q) =>
      Array.from({ length: q }, () => ({
        c,
        g,
        t: day(dEnd) + 1,
        d:
          Math.round(
            (M(dEnd) +
              (S.get(+c.slice(1)) || 0) +
              (D.has(+g.slice(1)) ? D.get(+g.slice(1))(dEnd) : 0) +
              own[+c.slice(1)] +
              sig * normal(r)) *
              50,
          ) / 50,
      })),
    truth: {
      m: M(dEnd),
      C: new Map([...S].map(([k, v]) => ['C' + k, v])),
      D: new Map([...D].map(([k, f]) => ['D' + k, f(dEnd)])),
    },
  };
}

// today's CRIMPCAUSE in plain numbers
const lg = x => {
  const c = [
    76.18009172947146, -86.50532032941677, 24.01409824083091, -1.231739572450155, 0.1208650973866179e-2, -0.5395239384953e-5,
  ];
  let y = x,
    t = x + 5.5;
  t -= (x + 0.5) * Math.log(t);
  let s = 1.000000000190015;
  for (const q of c) s += q / ++y;
  return -t + Math.log((2.5066282746310005 * s) / x);
};
const cf = (a, b, x) => {
  let qab = a + b,
    qap = a + 1,
    qam = a - 1,
    c = 1,
    d = 1 - (qab * x) / qap;
  if (Math.abs(d) < 1e-30) d = 1e-30;
  d = 1 / d;
  let h = d;
  for (let m = 1; m < 500; m++) {
    const m2 = 2 * m;
    let aa = (m * (b - m) * x) / ((qam + m2) * (a + m2));
    d = 1 + aa * d;
    if (Math.abs(d) < 1e-30) d = 1e-30;
    c = 1 + aa / c;
    if (Math.abs(c) < 1e-30) c = 1e-30;
    d = 1 / d;
    h *= d * c;
    aa = (-(a + m) * (qab + m) * x) / ((a + m2) * (qap + m2));
    d = 1 + aa * d;
    if (Math.abs(d) < 1e-30) d = 1e-30;
    c = 1 + aa / c;
    if (Math.abs(c) < 1e-30) c = 1e-30;
    d = 1 / d;
    const e = d * c;
    h *= e;
    if (Math.abs(e - 1) < 1e-14) break;
  }
  return h;
};
export const ibeta = (x, a, b) => {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const f = Math.exp(lg(a + b) - lg(a) - lg(b) + a * Math.log(x) + b * Math.log(1 - x));
  return x < (a + 1) / (a + b + 2) ? (f * cf(a, b, x)) / a : 1 - (f * cf(b, a, 1 - x)) / b;
};
export const fUpper = (F, a, b) => (F <= 0 ? 1 : ibeta(b / (b + a * F), b / 2, a / 2));
const tUp = (t, df) => ibeta(df / (df + t * t), df / 2, 0.5) / 2;
const memo = new Map();
export const tQ = (p, df) => {
  const k = p + '/' + df;
  if (memo.has(k)) return memo.get(k);
  let lo = 0,
    hi = 1;
  while (tUp(hi, df) > 1 - p) hi *= 2;
  for (let i = 0; i < 80; i++) {
    const m = (lo + hi) / 2;
    if (tUp(m, df) > 1 - p) lo = m;
    else hi = m;
  }
  memo.set(k, hi);
  return hi;
};
const fit = g => {
  const n = g.reduce((s, x) => s + x.n, 0),
    mean = g.reduce((s, x) => s + x.n * x.m, 0) / n,
    df = n - g.length,
    w = g.reduce((s, x) => s + x.q, 0),
    b = g.reduce((s, x) => s + x.n * (x.m - mean) ** 2, 0);
  return {
    n,
    mean,
    df,
    s: Math.sqrt(w / df),
    p: df > 0 && g.length > 1 ? fUpper(b / (g.length - 1) / (w / df), g.length - 1, df) : NaN,
  };
};
const against = g => {
  const T = g.reduce((s, x) => s + x.m, 0),
    I = g.reduce((s, x) => s + 1 / x.n, 0),
    o = g.length - 1;
  return g.map(x => ({ d: x.m - (T - x.m) / o, u: Math.sqrt(1 / x.n + (I - 1 / x.n) / o ** 2) }));
};
export function today(rows, T, conf = 0.95, act = 0.5) {
  const by = new Map();
  for (const r of rows) by.set(r.c, [...(by.get(r.c) || []), r.d]);
  const G = [...by].map(([c, v]) => {
    const m = v.reduce((s, x) => s + x, 0) / v.length;
    return { c, n: v.length, m, q: v.reduce((s, x) => s + (x - m) ** 2, 0) };
  });
  const all = fit(G);
  if (G.length < 3 || all.df < 1) return { finding: 'NOT ENOUGH DATA' };
  let kept = [...G];
  while (kept.length > 2 && fit(kept).p < 1 - conf) {
    const a = against(kept).map(({ d, u }) => Math.abs(d) / u),
      k = a.indexOf(Math.max(...a));
    kept = kept.filter((_, i) => i !== k);
  }
  const rest = fit(kept);
  if (!(rest.df > 0) || !against(kept).every(({ d, u }) => Math.abs(d) + tQ(conf, rest.df) * rest.s * u <= T))
    return { finding: 'NOT ENOUGH DATA' };
  const off = rest.mean,
    h = (tQ((1 + conf) / 2, rest.df) * rest.s) / Math.sqrt(rest.n),
    counts = Math.abs(off) > h && Math.abs(off) >= act * T;
  const own = G.filter(x => !kept.includes(x) && Math.abs(x.m - off) >= act * T).map(x => [x.c, x.m - off]);
  const out = G.some(x => Math.abs(x.m) > T);
  return {
    finding: counts && own.length ? 'BOTH' : counts ? 'MACHINE' : own.length ? 'SETTING' : out ? 'NOT ENOUGH DATA' : 'IN SPEC',
    m: counts ? off : 0,
    offset: off,
    half: h,
    own,
  };
}
