package weltwright.app.gui.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Insets;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;

class ViewportTest {
    private static final Viewport VIEW = new Viewport(2, new Point(10, 20), 400, 300);

    @Test
    void mapsTheCentreToTheMiddleWithYUp() {
        assertThat(VIEW.toPx(new Point(10, 20))).isEqualTo(new Point(200, 150));
        assertThat(VIEW.toPx(new Point(15, 30))).isEqualTo(new Point(210, 130));
    }

    @Property
    void invertsToPxByToMm(
            @ForAll @DoubleRange(min = -500, max = 500) double x,
            @ForAll @DoubleRange(min = -500, max = 500) double y) {
        Point back = VIEW.toMm(VIEW.toPx(new Point(x, y)));
        assertThat(back.distance(new Point(x, y))).isLessThan(1e-9);
    }

    @Property
    void zoomsAboutThePointUnderTheMouse(
            @ForAll @DoubleRange(min = 0, max = 400) double x,
            @ForAll @DoubleRange(min = 0, max = 300) double y,
            @ForAll @DoubleRange(min = 0.01, max = 1000) double factor) {
        Point mouse = new Point(x, y);
        Point held = VIEW.toMm(mouse);
        assertThat(VIEW.zoomed(factor, mouse).toPx(held).distance(mouse)).isLessThan(1e-6);
    }

    @Test
    void pansWithTheMouse() {
        Point place = new Point(3, 4);
        Point before = VIEW.toPx(place);
        Point after = VIEW.panned(7, -5).toPx(place);
        assertThat(after.minus(before)).isEqualTo(new Point(7, -5));
    }

    @Test
    void fitsTheExtentWithinTheMargins() {
        Rectangle2D extent = new Rectangle2D.Double(-50, 10, 200, 30);
        Viewport fitted = Viewport.fit(extent, 440, 300, new Insets(20, 20, 20, 20));
        assertThat(fitted.pxPerMm()).isEqualTo(2);
        assertThat(fitted.toPx(new Point(-50, 25)).x()).isCloseTo(20, within(1e-9));
        assertThat(fitted.toPx(new Point(150, 25)).x()).isCloseTo(420, within(1e-9));
    }

    @Test
    void transformsAsToPxDoes() {
        Point2D.Double px = new Point2D.Double();
        VIEW.transform().transform(new Point2D.Double(-3, 8), px);
        assertThat(new Point(px.x, px.y)).isEqualTo(VIEW.toPx(new Point(-3, 8)));
    }

    /**
     * By hand: 100 by 50 mm in 400 by 300 pixels, of which 100 at the right and 50 below stay free, goes at 3 pixels to
     * the mm.
     */
    @Test
    void fitsWithinUnequalMargins() {
        Rectangle2D extent = new Rectangle2D.Double(10, 20, 100, 50);
        Viewport fitted = Viewport.fit(extent, 400, 300, new Insets(0, 0, 50, 100));
        assertThat(fitted.pxPerMm()).isCloseTo(3, within(1e-12));
        assertThat(fitted.toPx(new Point(10, 70))).isEqualTo(new Point(0, 50));
        assertThat(fitted.toPx(new Point(110, 20))).isEqualTo(new Point(300, 200));
    }
}
