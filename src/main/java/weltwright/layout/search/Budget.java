package weltwright.layout.search;

/**
 * How long a search may go on: by the clock, or by a number of passes. With the same seed and a number of passes the
 * result is the same on any machine; by the clock it is as good as the machine is fast.
 */
public final class Budget {
    private final double limit;
    private final boolean timed;
    private final long startNanos;
    private long passes;

    private Budget(double limit, boolean timed) {
        this.limit = limit;
        this.timed = timed;
        startNanos = System.nanoTime();
    }

    /** A budget of time that begins now. */
    public static Budget seconds(double seconds) {
        return new Budget(seconds, true);
    }

    /** A budget of passes, each of which moves every shape that overlaps once. */
    public static Budget passes(long passes) {
        return new Budget(passes, false);
    }

    void count(int more) {
        passes += more;
    }

    /** The part of the budget that is used up: 1 or more at its end. */
    public double used() {
        return (timed ? (System.nanoTime() - startNanos) * 1e-9 : passes) / limit;
    }
}
