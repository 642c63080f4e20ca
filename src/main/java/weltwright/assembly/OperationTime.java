package weltwright.assembly;

import static weltwright.assembly.AssemblyText.text;

/**
 * The estimated time of an operation.
 *
 * @param benchMinutes of work
 * @param waitMinutes of drying or setting after it
 */
public record OperationTime(int benchMinutes, int waitMinutes) {
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
        String waiting = wait < 48 ? wait + " h" : text("%d days %d h", wait / 24, wait % 24);
        return "about " + words(Math.max(15, bench)) + " at the bench, and " + waiting + " of waiting";
    }

    private static String words(int minutes) {
        int hours = minutes / 60;
        int rest = minutes % 60;
        if (hours == 0) {
            return rest + " min";
        }
        return rest == 0 ? hours + " h" : text("%d h %d min", hours, rest);
    }
}
