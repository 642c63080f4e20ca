package weltwright.app.gui.photo;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.Photo;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.Length;
import weltwright.wording.TraceWording;

/**
 * The photo as it was taken, over it the ground that was found in it; and, where the ground is a rectangle, its four
 * corners to be pulled to where the photo shows them, with the mouse or with the keys, and a magnified view of the one
 * that is held.
 */
public final class PhotoCanvas extends DrawingCanvas {
    private static final double FAR_NUDGE_PX = 10;
    private static final double MAGNIFIED = 5;
    private static final float GLASS_PX = 180;

    private final JobModel bench;
    private final List<Runnable> watchers = new ArrayList<>();
    private Optional<BackgroundImage> picture = Optional.empty();
    private Optional<PhotoAssessment.SeenGround> ground = Optional.empty();
    private Optional<GroundChoice.Rectangle> pulled = Optional.empty();
    private Optional<Integer> held = Optional.empty();
    private Object pull = new Object();
    private String refusal = "";

    PhotoCanvas(JobModel bench) {
        this.bench = bench;
        setName("photo drawing");
        getAccessibleContext().setAccessibleName("The photo");
        getAccessibleContext()
                .setAccessibleDescription(
                        "Where the ground is a rectangle: 1 to 4 take hold of a corner, the arrows move it.");
        for (int k = 0; k < 4; k++) {
            int corner = k;
            onKey("pressed " + (k + 1), () -> hold(Optional.of(corner)));
            onKey("pressed NUMPAD" + (k + 1), () -> hold(Optional.of(corner)));
        }
        onKey("PERIOD", () -> step(1));
        onKey("COMMA", () -> step(3));
        onKey("LEFT", () -> nudge(-1, 0));
        onKey("RIGHT", () -> nudge(1, 0));
        onKey("UP", () -> nudge(0, -1));
        onKey("DOWN", () -> nudge(0, 1));
        onKey("shift LEFT", () -> nudge(-FAR_NUDGE_PX, 0));
        onKey("shift RIGHT", () -> nudge(FAR_NUDGE_PX, 0));
        onKey("shift UP", () -> nudge(0, -FAR_NUDGE_PX));
        onKey("shift DOWN", () -> nudge(0, FAR_NUDGE_PX));
        onKey("ESCAPE", () -> {
            pulled = Optional.empty();
            hold(Optional.empty());
        });
        bench.watch(() -> {
            pulled = Optional.empty();
            if (rectangle().isEmpty()) {
                held = Optional.empty();
            }
            changed();
        });
    }

    /** Called when what there is to say is another thing. */
    void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    public void show(Optional<BackgroundImage> taken) {
        picture = taken;
        changed();
    }

    void showGround(Optional<PhotoAssessment.SeenGround> found) {
        ground = found;
        repaint();
    }

    /** Why the last thing asked for was not done; or empty. */
    String refusal() {
        return refusal;
    }

    /** The rectangle as it is to be drawn; empty where the ground is another. */
    private Optional<GroundChoice.Rectangle> rectangle() {
        return pulled.or(() -> bench.job().settings().ground() instanceof GroundChoice.Rectangle told
                ? Optional.of(told)
                : Optional.empty());
    }

    private List<Point> corners() {
        return rectangle().map(GroundChoice.Rectangle::corners).orElse(List.of()).stream()
                .map(this::toMm)
                .toList();
    }

    private Optional<Photo> photo() {
        return bench.job().photo();
    }

    private double mmPerPx() {
        return photo().map(photo -> BackgroundImage.TAKEN_WIDTH_MM / photo.widthPx())
                .orElse(1.0);
    }

    /** A pixel's place in the drawing; a pixel's middle is a whole number, and the picture begins at its rim. */
    Point toMm(Point px) {
        double height = photo().map(Photo::heightPx).orElse(0);
        return new Point(px.x() + 0.5, height - px.y() - 0.5).times(mmPerPx());
    }

    private Point toPx(Point mm) {
        double height = photo().map(Photo::heightPx).orElse(0);
        Point px = mm.times(1 / mmPerPx());
        return new Point(px.x() - 0.5, height - px.y() - 0.5);
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return picture.map(BackgroundImage::extent);
    }

    @Override
    protected void paint(Graphics2D g, Viewport at) {
        picture.ifPresent(p -> p.paint(g, at));
        if (rectangle().isEmpty()) {
            ground.ifPresent(seen -> {
                Graphics2D onPhoto = (Graphics2D) g.create();
                picture.ifPresent(p -> onPhoto.clip(at.transform().createTransformedShape(p.extent())));
                GroundPainter.paint(
                        onPhoto,
                        at,
                        seen.lines().stream().map(line -> line.map(this::toMm)).toList());
                onPhoto.dispose();
                GroundPainter.title(g, TraceWording.label(seen.label()));
            });
        }
        rectangle().ifPresent(told -> {
            paintSides(g, at, told);
            List<Point> corners = corners();
            for (int k = 0; k < corners.size(); k++) {
                paintCorner(g, at.toPx(corners.get(k)), k);
            }
            held.ifPresent(k -> paintGlass(g, at, corners.get(k), k));
        });
    }

    private void paintSides(Graphics2D g, Viewport at, GroundChoice.Rectangle told) {
        List<Point> corners = corners();
        Shape sides = at.transform().createTransformedShape(AnnotationPainter.path(Polyline.closed(corners)));
        AnnotationPainter.drawRimmed(g, sides, 1.6f, ThemeColors.handleOverlay());
        paintLength(g, at.toPx(corners.get(0).towards(corners.get(1), 0.5)), told.widthMm());
        paintLength(g, at.toPx(corners.get(1).towards(corners.get(2), 0.5)), told.heightMm());
    }

    private static void paintLength(Graphics2D g, Point px, double mm) {
        String words = new Length(mm).inMillimetres();
        AnnotationPainter.plate(
                g,
                words,
                px.x() - g.getFontMetrics().stringWidth(words) / 2.0 - 5,
                px.y() + 6,
                ThemeColors.handleOverlay());
    }

    private void paintCorner(Graphics2D g, Point px, int corner) {
        boolean isHeld = held.equals(Optional.of(corner));
        double r = UIScale.scale(isHeld ? 9f : 7f);
        Shape ring = new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r);
        AnnotationPainter.drawRimmed(g, ring, 2, isHeld ? ThemeColors.handleOverlay() : Color.WHITE);
        AnnotationPainter.plate(
                g, (corner + 1) + "  " + GroundChoice.Rectangle.CORNER_NAMES.get(corner), px.x() + 14, px.y() - 26);
    }

    /** The corner magnified, in the half of the drawing where it is not. */
    private void paintGlass(Graphics2D g, Viewport at, Point corner, int k) {
        double size = UIScale.scale(GLASS_PX);
        Point seen = at.toPx(corner);
        double left = seen.x() > getWidth() / 2.0 ? 14 : getWidth() - size - 14;
        double top = getHeight() - size - 14;
        Shape frame = new Rectangle2D.Double(left, top, size, size);
        Graphics2D glass = (Graphics2D) g.create();
        glass.clip(frame);
        glass.translate(left, top);
        Viewport near = new Viewport(MAGNIFIED * at.pxPerMm(), corner, size, size);
        glass.setColor(ThemeColors.canvas());
        glass.fillRect(0, 0, (int) size + 1, (int) size + 1);
        picture.ifPresent(p -> p.paint(glass, near));
        glass.setStroke(AnnotationPainter.pen(1));
        glass.setColor(ThemeColors.handleOverlay());
        double middle = size / 2;
        double gap = UIScale.scale(5f);
        for (int side = -1; side <= 1; side += 2) {
            glass.draw(new Line2D.Double(middle + side * gap, middle, middle + side * middle, middle));
            glass.draw(new Line2D.Double(middle, middle + side * gap, middle, middle + side * middle));
        }
        glass.draw(near.transform().createTransformedShape(AnnotationPainter.path(Polyline.closed(corners()))));
        glass.dispose();
        g.setColor(Color.WHITE);
        g.setStroke(AnnotationPainter.pen(2));
        g.draw(frame);
        AnnotationPainter.plate(g, "corner " + (k + 1) + ", magnified", left + 6, top + 6, ThemeColors.handleOverlay());
    }

    @Override
    protected boolean grab(Point mm, double reachMm) {
        hold(near(mm, reachMm));
        pull = new Object();
        return held.isPresent();
    }

    @Override
    protected void drag(Point mm) {
        held.ifPresent(k -> moved(k, toPx(mm)).ifPresent(told -> pulled = Optional.of(told)));
    }

    @Override
    protected void letGo() {
        pulled.ifPresent(told -> lie(pull, told));
    }

    @Override
    protected boolean over(Point mm, double reachMm) {
        return near(mm, reachMm).isPresent();
    }

    private Optional<Integer> near(Point mm, double reachMm) {
        List<Point> corners = corners();
        return IntStream.range(0, corners.size())
                .boxed()
                .filter(k -> corners.get(k).distance(mm) <= reachMm)
                .min(Comparator.comparingDouble(k -> corners.get(k).distance(mm)));
    }

    private void hold(Optional<Integer> corner) {
        held = rectangle().isPresent() ? corner : Optional.empty();
        refuse("");
    }

    private void step(int by) {
        hold(Optional.of(held.map(k -> (k + by) % 4).orElse(0)));
    }

    private void nudge(double rightPx, double downPx) {
        held.ifPresent(k -> moved(k, rectangle().orElseThrow().corners().get(k).plus(new Point(rightPx, downPx)))
                .ifPresent(told -> lie("nudge corner " + k, told)));
    }

    /** The rectangle with one corner elsewhere, inside the photo; empty where its corners would lie as none can. */
    private Optional<GroundChoice.Rectangle> moved(int corner, Point toPx) {
        GroundChoice.Rectangle told = rectangle().orElseThrow();
        List<Point> corners = new ArrayList<>(told.corners());
        corners.set(
                corner,
                new Point(
                        within(toPx.x(), photo().map(Photo::widthPx).orElse(1)),
                        within(toPx.y(), photo().map(Photo::heightPx).orElse(1))));
        try {
            GroundChoice.Rectangle moved = new GroundChoice.Rectangle(told.widthMm(), told.heightMm(), corners);
            refuse("");
            return Optional.of(moved);
        } catch (UserFacingException trouble) {
            refuse("The four sides must not cross.");
            return Optional.empty();
        }
    }

    private static double within(double px, int count) {
        return Math.max(0, Math.min(count - 1, px));
    }

    private void lie(Object source, GroundChoice.Rectangle told) {
        bench.change(source, job -> job.withSettings(job.settings().withGround(told)));
    }

    private void refuse(String why) {
        refusal = why;
        List.copyOf(watchers).forEach(Runnable::run);
        repaint();
    }
}
