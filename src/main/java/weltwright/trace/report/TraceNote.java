package weltwright.trace.report;

/** One thing that was used for a trace, with how sure it is, as data: it is worded where it is shown. */
public sealed interface TraceNote {

    /**
     * The printed sheet was found.
     *
     * @param page name of its size: "A4"
     * @param corners how many corners were found
     * @param used how many of them the pose is solved from
     * @param sigmaPx standard deviation of a coordinate of theirs
     */
    record SheetFound(String page, int corners, int used, double sigmaPx) implements TraceNote {}

    /**
     * A ruled ground was found.
     *
     * @param pitchMm from line to line
     * @param crossings how many crossings were found
     * @param used how many of them the pose is solved from
     * @param sigmaPx standard deviation of a coordinate of theirs
     */
    record RulingFound(double pitchMm, int crossings, int used, double sigmaPx) implements TraceNote {}

    /**
     * Blank paper was found.
     *
     * @param points how many points of its edges were found
     * @param used how many of them the pose is solved from
     * @param sigmaPx standard deviation of their distance from the edge
     */
    record PaperFound(double widthMm, double heightMm, int points, int used, double sigmaPx) implements TraceNote {}

    /** The paper's size follows from its proportions, which other sizes have, too. */
    record PaperSizeFromProportions() implements TraceNote {}

    /**
     * The straight edges of a rectangle whose corners were set by hand were found.
     *
     * @param used how many points of its edges the pose is solved from
     * @param sigmaPx standard deviation of their distance from the edge
     */
    record RectangleByEdges(double widthMm, double heightMm, int used, double sigmaPx) implements TraceNote {}

    /** A rectangle is known by the four corners alone that were set by hand. */
    record RectangleByCorners(double widthMm, double heightMm, double mmPerPx) implements TraceNote {}

    /**
     * The focal length that was used.
     *
     * @param focal35mm in 35 mm terms
     * @param error95Percent how far it may be off, at 95 %
     */
    record FocalLength(double focal35mm, double error95Percent, LensSource source) implements TraceNote {}

    /**
     * Where the camera was.
     *
     * @param distanceMm from the ground's middle
     * @param slantDegrees of its axis from straight down
     */
    record CameraPosition(double distanceMm, double slantDegrees) implements TraceNote {}

    /** Something about the photo makes the trace worse. */
    record Advised(PhotoAdvice advice) implements TraceNote {}

    /** A sentence of a job file that an earlier version wrote. */
    record FreeText(String sentence) implements TraceNote {}
}
