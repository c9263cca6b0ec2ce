package look

import (
	"container/list"
	"hash"
	"hash/fnv"
	"math"
	"sync"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// key names a bake by everything that it depends on: 128 bits of a hash.
type key struct{ h hash.Hash }

type keySum [16]byte

func newKey(kind string) key {
	k := key{fnv.New128a()}
	k.h.Write([]byte(kind))
	return k
}

func (k key) number(x float64) key {
	var b [8]byte
	n := math.Float64bits(x)
	for i := range b {
		b[i] = byte(n >> (8 * i))
	}
	k.h.Write(b[:])
	return k
}

func (k key) colour(c design.Colour) key {
	k.h.Write([]byte{c.R, c.G, c.B})
	return k
}

func (k key) loops(loops []geom.Loop) key {
	for _, l := range loops {
		k.number(float64(len(l)))
		for _, p := range l {
			k.number(p.X)
			k.number(p.Y)
		}
	}
	return k
}

func (k key) sum() (s keySum) {
	k.h.Sum(s[:0])
	return s
}

// cache keeps the bakes that were used last. Its contents follow from their keys
// alone, so no picture depends on what was baked before it.
type cache struct {
	mu    sync.Mutex
	met   map[keySum]*list.Element
	order *list.List // front: used last
	bytes int
	ovens map[keySum]*oven // what is being made
}

// oven is a bake that is being made.
type oven struct {
	once  sync.Once
	patch *Patch
}

type kept struct {
	key   keySum
	patch *Patch
	bytes int
}

// maxBytes bounds what the cache holds.
const maxBytes = 64 << 20

func newCache() *cache {
	return &cache{met: map[keySum]*list.Element{}, order: list.New(), ovens: map[keySum]*oven{}}
}

var bakes = newCache()

// has reports whether the bake of a key is there.
func (c *cache) has(k key) bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	_, ok := c.met[k.sum()]
	return ok
}

// get gives the bake of a key, made by bake if it is not there. Who asks for one
// that is being made waits for it.
func (c *cache) get(k key, bake func() *Patch) *Patch {
	sum := k.sum()
	c.mu.Lock()
	if e, ok := c.met[sum]; ok {
		c.order.MoveToFront(e)
		c.mu.Unlock()
		return e.Value.(kept).patch
	}
	o, ok := c.ovens[sum]
	if !ok {
		o = new(oven)
		c.ovens[sum] = o
	}
	c.mu.Unlock()
	o.once.Do(func() { o.patch = c.bake(sum, bake) })
	return o.patch
}

// bake makes a bake and keeps it.
func (c *cache) bake(sum keySum, bake func() *Patch) *Patch {
	defer func() {
		c.mu.Lock()
		delete(c.ovens, sum)
		c.mu.Unlock()
	}()
	p := bake()
	size := 0
	for _, l := range p.levels {
		size += 4 * len(l.pix)
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if _, ok := c.met[sum]; ok {
		return p
	}
	c.met[sum] = c.order.PushFront(kept{sum, p, size})
	c.bytes += size
	for c.bytes > maxBytes && c.order.Len() > 1 {
		e := c.order.Back()
		old := c.order.Remove(e).(kept)
		delete(c.met, old.key)
		c.bytes -= old.bytes
	}
	return p
}
