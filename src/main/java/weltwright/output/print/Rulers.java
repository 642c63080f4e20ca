package weltwright.output.print;

import java.awt.Color;
import java.io.IOException;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.output.PageFrame;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;

/** The bars along two margins of each page: millimetres on one side of the line, inches on the other. */
final class Rulers {
    private static final double MM_PER_INCH = 25.4;
    private static final int LENGTH_MM = 150;
    private static final int LENGTH_IN = 6;
    private static final double NUMBER_MM = 2.2;
    private static final LineStroke STROKE = LineStroke.unbroken(0.12, Color.BLACK);

    private final PdfCanvas canvas;

    Rulers(PdfCanvas canvas) {
        this.canvas = canvas;
    }

    /** Both bars, from the corner of the square: to the right below it, and up on its left. */
    void draw(PageFrame frame) throws IOException {
        double axis = PageFrame.BAR_DEPTH_MM / 2 + 0.2;
        draw(new RigidMotion(0, frame.squareCorner().minus(new Point(0, axis))), 1);
        draw(new RigidMotion(Math.PI / 2, frame.squareCorner().minus(new Point(axis, 0))), -1);
    }

    /** @param inward the side of the bar, seen along it, that the square is on: 1 left, -1 right */
    private void draw(RigidMotion bar, double inward) throws IOException {
        canvas.draw(STROKE, bar.apply(new Point(0, 0)), bar.apply(new Point(LENGTH_IN * MM_PER_INCH, 0)));
        for (int mm = 0; mm <= LENGTH_MM; mm++) {
            double tick = mm % 10 == 0 ? 2.2 : mm % 5 == 0 ? 1.6 : 1;
            tick(bar, mm, inward * tick);
            if (mm % 10 == 0) {
                number(bar, Integer.toString(mm), mm, inward);
            }
        }
        for (int eighth = 0; eighth <= 8 * LENGTH_IN; eighth++) {
            double at = eighth * MM_PER_INCH / 8;
            double tick = eighth % 8 == 0 ? 2.2 : eighth % 4 == 0 ? 1.6 : 1;
            tick(bar, at, -inward * tick);
            if (eighth % 8 == 0) {
                number(bar, Integer.toString(eighth / 8), at, -inward);
            }
        }
        number(bar, "mm", LENGTH_MM + 5, inward);
        number(bar, "in", LENGTH_IN * MM_PER_INCH + 4, -inward);
    }

    private void tick(RigidMotion bar, double at, double length) throws IOException {
        canvas.draw(STROKE, bar.apply(new Point(at, 0)), bar.apply(new Point(at, length)));
    }

    private void number(RigidMotion bar, String number, double at, double side) throws IOException {
        double height = NUMBER_MM * PdfTypeface.CAPITAL;
        double near = 2.6;
        double base = side > 0 ? near : -near - height;
        double width = canvas.typeface().widthMm(number, NUMBER_MM);
        canvas.write(number, bar.apply(new Point(at - width / 2, base)), bar.angleRad(), NUMBER_MM, Color.BLACK);
    }
}
