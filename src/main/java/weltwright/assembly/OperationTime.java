package weltwright.assembly;

import weltwright.message.Messages;

/**
 * The estimated time of an operation.
 *
 * @param benchMinutes of work
 * @param waitMinutes of drying or setting after it
 */
public record OperationTime(int benchMinutes, int waitMinutes) {
    private static final Messages TEXTS = Messages.of(OperationTime.class);

    public static final OperationTime NONE = new OperationTime(0, 0);

    /** Returns the sum of both, with waits one after another. */
    public OperationTime plus(OperationTime other) {
        return new OperationTime(benchMinutes + other.benchMinutes, waitMinutes + other.waitMinutes);
    }

    /** "35 min", "2 h 10 min". */
    public String benchWords() {
        return words(benchMinutes);
    }

    /** "15 min", "12 h"; empty where there is no wait. */
    public String waitWords() {
        return waitMinutes == 0 ? "" : words(waitMinutes);
    }

    /** Returns both, rounded: "about 6 h at the bench, and 2 days 14 h of waiting". */
    public String inAll() {
        int bench = 15 * Math.round(benchMinutes / 15f);
        int wait = Math.round(waitMinutes / 60f);
        String waiting = wait < 48 ? wait + " h" : TEXTS.text("operation-time.days-h", wait / 24, wait % 24);
        return TEXTS.text("operation-time.about-at-the-bench-and", words(Math.max(15, bench)), waiting);
    }

    private static String words(int minutes) {
        int hours = minutes / 60;
        int rest = minutes % 60;
        if (hours == 0) {
            return TEXTS.text("operation-time.min", rest);
        }
        return rest == 0 ? hours + " h" : TEXTS.text("operation-time.h-min", hours, rest);
    }
}
