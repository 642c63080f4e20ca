package weltwright.ground;

/** What the lines of a {@link GroundLines} show, with the length that was taken for true. */
public sealed interface GroundLabel {

    /**
     * Squares of the printed reference sheet.
     *
     * @param page name of the printed sheet's size
     */
    record SheetSquares(String page, double squareMm) implements GroundLabel {}

    /**
     * Lines of a ruled ground.
     *
     * @param pitchMm from line to line of a ruled ground
     */
    record Ruling(double pitchMm) implements GroundLabel {}

    /** How far apart the lines of a ruled ground are is not known. */
    record UnknownRuling() implements GroundLabel {}

    record Rectangle(double widthMm, double heightMm) implements GroundLabel {}
}
