package weltwright.ground;

/** Names the unit that the lines of a {@link GroundLines} show, with the length that was assumed for it. */
public sealed interface GroundLabel {

    /**
     * Squares of the printed reference sheet.
     *
     * @param page name of the page size
     */
    record SheetSquares(String page, double squareMm) implements GroundLabel {}

    /**
     * Lines of a ruled ground.
     *
     * @param pitchMm distance of neighbouring lines
     */
    record Ruling(double pitchMm) implements GroundLabel {}

    /** Lines of a ruled ground of unknown pitch. */
    record UnknownRuling() implements GroundLabel {}

    record Rectangle(double widthMm, double heightMm) implements GroundLabel {}
}
