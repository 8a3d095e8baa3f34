package org.teavm.classlib.java.util;

import java.util.stream.DoubleStream;
import java.util.stream.LongStream;

/**
 * {@code java.util.SplittableRandom} in a browser, as far as ensembles need it: the generator of
 * Steele, Lea and Flood (2014, Fast splittable pseudorandom number generators, OOPSLA), with the
 * mixing constants of variant 13 of Stafford (2011), as the platform has them.
 */
public final class TSplittableRandom {
    private static final long GOLDEN_GAMMA = 0x9e3779b97f4a7c15L;

    private long seed;

    public TSplittableRandom(long seed) {
        this.seed = seed;
    }

    public long nextLong() {
        seed += GOLDEN_GAMMA;
        long mixed = (seed ^ seed >>> 30) * 0xbf58476d1ce4e5b9L;
        mixed = (mixed ^ mixed >>> 27) * 0x94d049bb133111ebL;
        return mixed ^ mixed >>> 31;
    }

    public double nextDouble() {
        return (nextLong() >>> 11) * 0x1p-53;
    }

    public LongStream longs(long count) {
        return LongStream.generate(this::nextLong).limit(count);
    }

    public DoubleStream doubles(long count) {
        return DoubleStream.generate(this::nextDouble).limit(count);
    }
}
