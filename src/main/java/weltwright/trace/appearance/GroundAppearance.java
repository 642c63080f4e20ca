package weltwright.trace.appearance;

import weltwright.geometry.Point;

/** The appearance of a ground around the knife in one photo: its print, and where the print is visible. */
public interface GroundAppearance {
    /** Returns the point of the ground plane that projects to a pixel, in mm. */
    Point groundPoint(Point pixel);

    /** Returns what is printed at a point of the ground. */
    GroundPrint printAt(Point place);

    /** Returns 1 where a printed line is visible, −1 where it is hidden, 0 where there is none or it is undecided. */
    double lineVisibilityAt(Point place);

    /** Returns the colour of the paper minus that of its lines: blue, green, red, in grey levels. */
    double[] lineColour();

    /** Returns whether the ground is as grey and as bright as steel may be. */
    boolean isSteelGrey();
}
