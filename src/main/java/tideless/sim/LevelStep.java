package tideless.sim;

/**
 * One tray's water over one span of constant loss and constant head, in closed form.
 *
 * <p>The opening of a throttling valve falls evenly with the volume across its band (for straight
 * walls: with the level). Then each regime has a solution that can be written down: shut and wide
 * open are straight lines, throttling is an exponential approach; the instant at which one turns
 * into the next is found from that solution, so no crossing is stepped over and none is met twice.
 *
 * <p>Scratch space of one run; not for more than one thread.
 */
final class LevelStep {
    /** Volume at the end, m3. */
    double volumeM3;

    /** Come in through the valve, m3. */
    double inflowM3;

    /** Gone to the air and the plants, m3; less than asked for only when the tray ran dry. */
    double lossM3;

    /** Whether a snapping valve stands open at the end. */
    boolean snapOpen;

    /**
     * A tray without a valve.
     *
     * @param startM3 volume, m3
     * @param lossM3PerS loss while there is any, m3/s, at least 0
     * @param spanS s
     */
    void withoutValve(double startM3, double lossM3PerS, double spanS) {
        lossM3 = Math.min(startM3, lossM3PerS * spanS);
        volumeM3 = startM3 - lossM3;
        inflowM3 = 0;
    }

    /**
     * A tray held by a throttling valve.
     *
     * @param startM3 volume, m3
     * @param lossM3PerS loss while there is any, m3/s, at least 0
     * @param openM3PerS flow when wide open, m3/s, at least 0
     * @param shutM3 volume at and above which the valve is shut, m3
     * @param wideM3 volume at and below which it is wide open, m3, below {@code shutM3}
     * @param spanS s
     */
    void throttling(
            double startM3,
            double lossM3PerS,
            double openM3PerS,
            double shutM3,
            double wideM3,
            double spanS) {
        double volume = startM3;
        double left = spanS;
        double in = 0;
        double out = 0;
        while (left > 0) {
            if (volume > shutM3) {
                double span = lossM3PerS > 0 ? (volume - shutM3) / lossM3PerS : left;
                if (span >= left) {
                    volume -= lossM3PerS * left;
                    out += lossM3PerS * left;
                    break;
                }
                out += volume - shutM3;
                volume = shutM3;
                left -= span;
            } else if (volume > wideM3 || (volume == wideM3 && lossM3PerS <= openM3PerS)) {
                if (openM3PerS <= 0) {
                    // A starved line: the band means nothing, the level falls straight through it.
                    double drop = Math.min(volume, lossM3PerS * left);
                    volume -= drop;
                    out += drop;
                    break;
                }
                double rate = openM3PerS / (shutM3 - wideM3);
                double rest = shutM3 - lossM3PerS / rate;
                double span = left;
                if (rest < wideM3) {
                    // log1p and expm1: a trickle puts the rest level far away, where plain forms
                    // cancel.
                    span = Math.log1p((volume - wideM3) / (wideM3 - rest)) / rate;
                }
                boolean leaves = span < left;
                if (!leaves) {
                    span = left;
                }
                double end =
                        leaves
                                ? wideM3
                                : Math.min(
                                        shutM3,
                                        volume + (volume - rest) * Math.expm1(-rate * span));
                double lost = lossM3PerS * span;
                in += Math.max(0, end - volume + lost);
                out += lost;
                volume = end;
                left -= span;
            } else {
                double net = openM3PerS - lossM3PerS;
                if (net > 0) {
                    double span = (wideM3 - volume) / net;
                    boolean leaves = span < left;
                    span = Math.min(span, left);
                    in += openM3PerS * span;
                    out += lossM3PerS * span;
                    volume = leaves ? wideM3 : volume + net * span;
                    left -= span;
                } else {
                    double span = net < 0 ? volume / -net : left;
                    if (span >= left) {
                        in += openM3PerS * left;
                        out += lossM3PerS * left;
                        volume = Math.max(0, volume + net * left);
                        break;
                    }
                    // Runs dry: from then on the plants get what the valve lets in, and no more.
                    in += openM3PerS * left;
                    out += volume + openM3PerS * left;
                    volume = 0;
                    break;
                }
            }
        }
        finish(startM3, volume, in, out);
    }

    /**
     * A tray held by a valve that snaps: it opens when the volume has fallen to {@code openAtM3}
     * and shuts when it has risen to {@code shutM3}. Arguments as {@link #throttling}.
     */
    void snapping(
            double startM3,
            double lossM3PerS,
            double openM3PerS,
            double shutM3,
            double openAtM3,
            boolean openAtStart,
            double spanS) {
        double volume = startM3;
        double left = spanS;
        double in = 0;
        double out = 0;
        boolean open = volume <= openAtM3 || (openAtStart && volume < shutM3);
        while (left > 0) {
            double net = (open ? openM3PerS : 0) - lossM3PerS;
            double target = open ? shutM3 : openAtM3;
            double span = left;
            boolean switches = false;
            if (open ? net > 0 : net < 0) {
                double until = (target - volume) / net;
                switches = until < left;
                span = Math.min(until, left);
            } else if (open && net < 0) {
                double until = volume / -net;
                if (until < left) {
                    in += openM3PerS * left;
                    out += volume + openM3PerS * left;
                    volume = 0;
                    break;
                }
            }
            in += (open ? openM3PerS : 0) * span;
            out += lossM3PerS * span;
            volume = switches ? target : Math.max(0, volume + net * span);
            left -= span;
            if (switches) {
                open = !open;
                if (!open && openAtM3 >= volume) {
                    throw new IllegalStateException("a snapping valve needs a hysteresis");
                }
            }
        }
        snapOpen = open;
        finish(startM3, volume, in, out);
    }

    // The loss is what closes the balance, so that it closes to the last bit the ledger can see.
    private void finish(double startM3, double volume, double in, double out) {
        volumeM3 = volume;
        inflowM3 = in;
        lossM3 = Math.max(0, startM3 + in - volume);
        if (Math.abs(lossM3 - out) > 1e-9 * (startM3 + in + 1e-6)) {
            throw new AssertionError(
                    "unbalanced step: lost %s, reckoned %s".formatted(lossM3, out));
        }
    }
}
