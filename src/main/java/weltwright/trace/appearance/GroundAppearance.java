package weltwright.trace.appearance;

import weltwright.geometry.Point;

/** What a ground looks like round the knife that lies on it, in one picture. */
public interface GroundAppearance {
    /** The place of the ground that is seen at a pixel, in mm. */
    Point place(Point pixel);

    /** What is printed at a place of the ground. */
    GroundPrint printAt(Point place);

    /** From 1, where a line is seen, to −1, where it is hidden; 0 where there is none, or where it cannot be told. */
    double shownAt(Point place);

    /** The colour of paper less that of its lines: blue, green, red, in grey levels. */
    double[] lineColour();

    /** Whether the ground is as grey and as bright as steel may be. */
    boolean isSteelGrey();
}
