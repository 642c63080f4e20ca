package weltwright.trace.report;

/** A note on what a trace is based on, with its uncertainty, as data; its sentence is made where it is shown. */
public sealed interface TraceNote {

    /**
     * The printed sheet was found.
     *
     * @param page name of its size: "A4"
     * @param corners number of chessboard corners found
     * @param used number of them from which the pose is solved
     * @param sigmaPx standard deviation of their coordinates
     */
    record SheetFound(String page, int corners, int used, double sigmaPx) implements TraceNote {}

    /**
     * A ruled ground was found.
     *
     * @param pitchMm distance of neighbouring lines
     * @param crossings number of crossings found
     * @param used number of them from which the pose is solved
     * @param sigmaPx standard deviation of their coordinates
     */
    record RulingFound(double pitchMm, int crossings, int used, double sigmaPx) implements TraceNote {}

    /**
     * Blank paper was found.
     *
     * @param points number of points of its edges found
     * @param used number of them from which the pose is solved
     * @param sigmaPx standard deviation of their distance from the edge
     */
    record PaperFound(double widthMm, double heightMm, int points, int used, double sigmaPx) implements TraceNote {}

    /** The paper's size was inferred from its proportions, which other sizes share. */
    record PaperSizeFromProportions() implements TraceNote {}

    /**
     * The straight edges of a rectangle whose corners were set by hand were found.
     *
     * @param used number of points of its edges from which the pose is solved
     * @param sigmaPx standard deviation of their distance from the edge
     */
    record RectangleByEdges(double widthMm, double heightMm, int used, double sigmaPx) implements TraceNote {}

    /** A rectangle is located by its four corners alone, which were set by hand. */
    record RectangleByCorners(double widthMm, double heightMm, double mmPerPx) implements TraceNote {}

    /**
     * The focal length that was used.
     *
     * @param focal35mm in 35 mm terms
     * @param error95Percent its relative error at 95 %, in percent
     */
    record FocalLength(double focal35mm, double error95Percent, LensSource source) implements TraceNote {}

    /**
     * The position of the camera.
     *
     * @param distanceMm from the ground's middle
     * @param slantDegrees angle of its optical axis from the vertical
     */
    record CameraPosition(double distanceMm, double slantDegrees) implements TraceNote {}

    /** An advice on the photo. */
    record Advised(PhotoAdvice advice) implements TraceNote {}

    /** A sentence of a job file that an earlier version wrote. */
    record FreeText(String sentence) implements TraceNote {}
}
