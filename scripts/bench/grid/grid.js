// The kernels of calc/surface in plain JavaScript, step for step as they stand in Go. It is here to be timed against them, and is
// no part of the site. It prints what scripts/bench/grid prints: a kernel's name, milliseconds of processor time, and a figure of its result.
"use strict"

const [size, runs] = process.argv.length > 3 ? process.argv.slice(2).map(Number) : [1000, 7]

function slab(n) {
  const g = {wide: n, deep: n, stepX: 25, stepY: 25, z: new Float64Array(n * n)}
  let seed = 1
  for (let row = 0; row < n; row++) {
    for (let col = 0; col < n; col++) {
      seed = (seed * 16807) % 2147483647
      const x = col * 25, y = row * 25
      g.z[row * n + col] = -0.02 * x + 3 * Math.sin(x / 700) * Math.cos(y / 900) + 1.2 * Math.sin(x / 130 + y / 170) + seed / 2147483647
    }
  }
  return g
}

function fit(g) {
  let count = 0, cols = 0, rows = 0, sum = 0
  for (let row = 0; row < g.deep; row++) {
    let n = 0, c = 0, s = 0
    for (let col = 0; col < g.wide; col++) {
      const z = g.z[row * g.wide + col]
      if (z === z) { n++; c += col; s += z }
    }
    count += n; cols += c; rows += row * n; sum += s
  }
  const midCol = cols / count, midRow = rows / count, mean = sum / count
  let xx = 0, xy = 0, yy = 0, xz = 0, yz = 0
  for (let row = 0; row < g.deep; row++) {
    const y = row - midRow
    for (let col = 0; col < g.wide; col++) {
      let z = g.z[row * g.wide + col]
      if (z === z) {
        const x = col - midCol
        z -= mean
        xx += x * x; xy += x * y; yy += y * y; xz += x * z; yz += y * z
      }
    }
  }
  xx *= g.stepX * g.stepX; xy *= g.stepX * g.stepY; yy *= g.stepY * g.stepY; xz *= g.stepX; yz *= g.stepY
  const det = xx * yy - xy * xy
  return {x: midCol * g.stepX, y: midRow * g.stepY, mean, b: (xz * yy - yz * xy) / det, c: (yz * xx - xz * xy) / det}
}

function over(g, p) {
  const out = new Float64Array(g.z.length)
  for (let row = 0; row < g.deep; row++) {
    const at = p.mean + p.b * (0 - p.x) + p.c * (row * g.stepY - p.y)
    for (let col = 0; col < g.wide; col++) {
      const i = row * g.wide + col
      out[i] = g.z[i] - at - p.b * col * g.stepX
    }
  }
  return out
}

// The straightedge: see straightedge.go, whose names these are.
function worst(g, lengths) {
  const best = lengths.map(() => 0)
  const most = Math.max(g.wide, g.deep)
  const x = new Float64Array(most), z = new Float64Array(most)
  const next = new Int32Array(most), head = new Int32Array(most), tail = new Int32Array(most)
  const hull = new Int32Array(most), left = new Int32Array(most), lower = new Int32Array(most)
  const from = [], to = [], fromNext = []
  let n = 0, top = 0, right = 0, low = 0, depth = 0

  const under = (l, r) => { for (let k = l + 1; k < r; k++) attempt(l, r, k) }
  const attempt = (l, r, k) => {
    const gap = z[l] + (z[r] - z[l]) * (x[k] - x[l]) / (x[r] - x[l]) - z[k]
    if (gap > depth) depth = gap
  }
  const isOver = (a, b, c) => (z[b] - z[a]) * (x[c] - x[a]) > (z[c] - z[a]) * (x[b] - x[a])
  const above = (a, b, k) => (z[k] - z[a]) * (x[b] - x[a]) > (z[b] - z[a]) * (x[k] - x[a])
  const before = (a, b, k) => (z[b] - z[k]) * (x[b] - x[a]) < (z[b] - z[a]) * (x[b] - x[k])
  const hollow = (a, e) => {
    const m = (z[e] - z[a]) / (x[e] - x[a])
    let lo = z[a] - m * x[a], hi = lo
    for (let k = a; k <= e; k++) {
      const v = z[k] - m * x[k]
      if (v < lo) lo = v
      if (v > hi) hi = v
    }
    return hi - lo
  }
  const roof = (a, e, reach) => {
    let h = 0
    hull[h++] = a
    for (let k = a + 1; k <= e; k++) {
      while (h >= 2) {
        const i = hull[h - 2], j = hull[h - 1]
        if ((z[j] - z[i]) * (x[k] - x[i]) > (z[k] - z[i]) * (x[j] - x[i])) break
        h--
      }
      hull[h++] = k
    }
    let bestGap = depth, f = 0, t = 0, at = -1, l = hull[0]
    for (let i = 1; i < h; i++) {
      const r = hull[i], rise = (z[r] - z[l]) / (x[r] - x[l]), level = z[l] - rise * x[l]
      for (let k = l + 1; k < r; k++) {
        const gap = level + rise * x[k] - z[k]
        if (gap > bestGap) { bestGap = gap; f = l; t = r; at = k }
      }
      l = r
    }
    if (at >= 0 && x[t] - x[f] > reach) return false
    if (at >= 0) attempt(f, t, at)
    return true
  }
  const reverse = (i, j) => { for (; i < j; i++, j--) { const v = left[i]; left[i] = left[j]; left[j] = v } }
  const block = (a, b, e, reach) => {
    for (let k = b; k >= a; k--) {
      let j = k + 1
      while (k < b && j < b && !isOver(k, j, next[j])) j = next[j]
      next[k] = j
    }
    for (let k = a; k < b; k = next[k]) under(k, next[k])
    top = 0
    for (let k = a; ; k = next[k]) { left[top++] = k; if (k === b) break }
    reverse(0, top - 1)
    slide(a, b, reach)
    for (let k = 1; k < right; k++) under(hull[k - 1], hull[k])
    soundings(a, b, e)
  }
  const lean = (l, to) => {
    while (l > 0 && before(left[l], to, left[l - 1])) l--
    while (l + 1 < top && before(left[l], to, left[l + 1])) l++
    return l
  }
  const slide = (a, b, reach) => {
    right = 0
    from.length = to.length = fromNext.length = 0
    let l = 0, r = -1, end = b
    for (let i = a; ; i++) {
      while (end < n - 1 && x[end + 1] - x[i] <= reach) {
        end++
        const high = r < 0 || above(left[l], hull[r], end)
        while (right >= 2 && !isOver(hull[right - 2], hull[right - 1], end)) right--
        hull[right++] = end
        if (!high) { r = Math.min(r, right - 1); continue }
        l = lean(l, end)
        from.push(left[l]); to.push(end); fromNext.push(head[left[l]])
        head[left[l]] = tail[end] = from.length
        r = right - 1
      }
      if (i === b) return
      const m = top - 1
      top = m
      const stop = left[m - 1]
      for (let k = i + 1; k !== stop; k = next[k]) left[top++] = k
      reverse(m, top - 1)
      if (l === m) {
        l = top - 1
        if (r >= 0) l = lean(l, hull[r])
      }
    }
  }
  const sink = k => {
    while (low >= 2) {
      const a = k, b = lower[low - 1], c = lower[low - 2]
      if ((z[b] - z[a]) * Math.abs(x[c] - x[a]) < (z[c] - z[a]) * Math.abs(x[b] - x[a])) break
      low--
    }
    lower[low++] = k
  }
  const deepest = q => {
    const f = from[q], rise = z[to[q]] - z[f], run = x[to[q]] - x[f]
    const below = t => (x[lower[t]] - x[f]) * rise - (z[lower[t]] - z[f]) * run
    let lo = 0, hi = low - 1
    while (lo < hi) {
      const mid = (lo + hi) >> 1
      if (below(mid) < below(mid + 1)) lo = mid + 1; else hi = mid
    }
    attempt(f, to[q], lower[lo])
  }
  const soundings = (a, b, e) => {
    low = 0
    for (let k = b; k >= a; k--) {
      sink(k)
      for (let q = head[k]; q !== 0; q = fromNext[q - 1]) deepest(q - 1)
      head[k] = 0
    }
    low = 0
    for (let k = b + 1; k <= e; k++) {
      sink(k)
      if (tail[k] !== 0) { deepest(tail[k] - 1); tail[k] = 0 }
    }
  }
  const scan = reach => {
    const last = (k, at) => { while (at < n - 1 && x[at + 1] - x[k] <= reach) at++; return at }
    for (let a = 0; a < n;) {
      const b = last(a, a), e = last(b, b)
      if (e - a >= 2 && hollow(a, e) > depth && !roof(a, e, reach)) block(a, b, e, reach)
      if (e === n - 1) break
      a = b + 1
    }
  }
  const take = (start, step, count, long) => {
    if (count < 3) return
    n = 0
    for (let k = 0, i = start; k < count; k++, i += step) {
      if (g.z[i] === g.z[i]) { x[n] = k; z[n] = g.z[i]; n++ }
    }
    if (n < 3) return
    lengths.forEach((length, i) => {
      const reach = length / long * (1 + 1e-9)
      if (reach < 2) return
      depth = best[i]
      scan(reach)
      best[i] = depth
    })
  }
  const w = g.wide, d = g.deep, across = Math.hypot(g.stepX, g.stepY)
  for (let row = 0; row < d; row++) take(row * w, 1, w, g.stepX)
  for (let col = 0; col < w; col++) take(col, w, d, g.stepY)
  for (let start = 1 - d; start < w; start++) {
    const row = Math.max(-start, 0), col = Math.max(start, 0), count = Math.min(w - col, d - row)
    take(row * w + col, w + 1, count, across)
    take(row * w + w - 1 - col, w - 1, count, across)
  }
  return best
}

// Ponds: see flood.go.
function ponds(g) {
  const wide = g.wide + 2, cells = wide * (g.deep + 2)
  const z = new Float64Array(cells).fill(NaN), seen = new Uint8Array(cells)
  for (let row = 0; row < g.deep; row++) z.set(g.z.subarray(row * g.wide, (row + 1) * g.wide), (row + 1) * wide + 1)
  const around = [-wide - 1, -wide, -wide + 1, -1, 1, wide - 1, wide, wide + 1]
  const heap = []
  const push = i => {
    let k = heap.push(i) - 1
    while (k > 0) {
      const up = (k - 1) >> 1
      if (z[heap[up]] <= z[i]) break
      heap[k] = heap[up]
      k = up
    }
    heap[k] = i
  }
  const pop = () => {
    const first = heap[0], last = heap.pop(), size = heap.length
    if (size === 0) return first
    let k = 0
    for (;;) {
      let down = 2 * k + 1
      if (down >= size) break
      if (down + 1 < size && z[heap[down + 1]] < z[heap[down]]) down++
      if (z[last] <= z[heap[down]]) break
      heap[k] = heap[down]
      k = down
    }
    heap[k] = last
    return first
  }
  for (let i = 0; i < cells; i++) {
    if (z[i] === z[i]) continue
    seen[i] = 1
    for (const step of around) {
      const n = i + step
      if (0 <= n && n < cells && !seen[n] && z[n] === z[n]) { seen[n] = 1; push(n) }
    }
  }
  const pool = []
  while (heap.length > 0) {
    const start = pop(), level = z[start]
    pool.push(start)
    while (pool.length > 0) {
      const i = pool.pop()
      for (let s = 0; s < 8; s++) {
        const n = i + around[s]
        if (seen[n]) continue
        seen[n] = 1
        if (z[n] <= level) { z[n] = level; pool.push(n) } else push(n)
      }
    }
  }
  let sum = 0
  for (let row = 0; row < g.deep; row++) {
    for (let col = 0; col < g.wide; col++) {
      const d = z[(row + 1) * wide + col + 1] - g.z[row * g.wide + col]
      if (d > 0) sum += d
    }
  }
  return sum
}

function volume(g, below) {
  let fillSum = 0, cutSum = 0, net = 0
  const c = new Float64Array(4)
  for (let row = 1; row < g.deep; row++) {
    for (let col = 1; col < g.wide; col++) {
      const i = row * g.wide + col
      c[0] = below[i]; c[1] = below[i - 1]; c[2] = below[i - g.wide]; c[3] = below[i - g.wide - 1]
      let fill = 0, cut = 0, n = 0
      for (let k = 0; k < 4; k++) {
        if (c[k] > 0) { fill += c[k]; n++ } else if (c[k] <= 0) { cut -= c[k]; n++ }
      }
      if (n < 3) continue
      const share = n === 3 ? 1 / 6 : 0.25
      fill *= share; cut *= share
      fillSum += fill; cutSum += cut
      const all = fill + cut
      if (all > 0) net += fill * fill / all
    }
  }
  return fillSum * g.stepX * g.stepY + 0 * (cutSum + net)
}

function contours(g, low, step) {
  let long = 0
  const c = new Float64Array(4), px = new Float64Array(4), py = new Float64Array(4)
  const cx = [0, 1, 1, 0], cy = [0, 0, 1, 1]
  const each = (a, b) => { long += Math.hypot((px[a] - px[b]) * g.stepX, (py[a] - py[b]) * g.stepY) }
  for (let row = 1; row < g.deep; row++) {
    for (let col = 1; col < g.wide; col++) {
      const i = row * g.wide + col
      c[0] = g.z[i - g.wide - 1]; c[1] = g.z[i - g.wide]; c[2] = g.z[i]; c[3] = g.z[i - 1]
      const least = Math.min(c[0], c[1], c[2], c[3]), most = Math.max(c[0], c[1], c[2], c[3])
      for (let k = Math.floor((least - low) / step) + 1; low + k * step <= most; k++) {
        const level = low + k * step
        let n = 0
        for (let side = 0; side < 4; side++) {
          let a = side, b = (side + 1) & 3
          if ((c[a] < level) === (c[b] < level)) continue
          if (side > 1) { const t = a; a = b; b = t }
          const t = (level - c[a]) / (c[b] - c[a])
          px[n] = cx[a] + t * (cx[b] - cx[a])
          py[n] = cy[a] + t * (cy[b] - cy[a])
          n++
        }
        if (n === 2) each(0, 1)
        else if (n === 4) {
          const middle = (c[0] + c[1] + c[2] + c[3]) / 4
          if ((middle < level) === (c[0] < level)) { each(0, 1); each(2, 3) } else { each(3, 0); each(1, 2) }
        }
      }
    }
  }
  return long
}

function falls(g) {
  let sum = 0
  for (let row = 1; row < g.deep; row++) {
    for (let col = 1; col < g.wide; col++) {
      const i = row * g.wide + col
      const z00 = g.z[i - g.wide - 1], z10 = g.z[i - g.wide], z01 = g.z[i - 1], z11 = g.z[i]
      const b = (z10 - z00 + z11 - z01) / 2 / g.stepX, c = (z01 - z00 + z11 - z10) / 2 / g.stepY
      sum += Math.sqrt(b * b + c * c)
    }
  }
  return sum
}

function timed(name, work) {
  const clock = () => { const u = process.cpuUsage(); return (u.user + u.system) / 1000 }
  const start = clock()
  const got = work()
  console.log(name, (clock() - start).toFixed(3), got)
}

const g = slab(size)
for (let run = 0; run < runs; run++) {
  let above
  timed("plane", () => { const p = fit(g); above = over(g, p); return Math.hypot(p.b, p.c) })
  timed("straightedges", () => worst(g, [3048, 609.6]).reduce((a, b) => a + b))
  timed("ponds", () => ponds(g))
  timed("volume", () => { for (let i = 0; i < above.length; i++) above[i] = -above[i]; return volume(g, above) })
  timed("contours", () => contours(g, -500, 50))
  timed("falls", () => falls(g))
}
