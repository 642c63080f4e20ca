package weltwright.app.gui.outline;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.theme.Theme;
import weltwright.geometry.Point;

/**
 * One frame of a drag in the outline's drawing, painted into memory at 1400 x 800 px over an image of 12 megapixels: a
 * node that is dragged, with its loupe, and the drawing that is panned. What is wanted: 16.7 ms, which is 60 frames a
 * second.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 4)
@Fork(1)
public class OutlineDragBenchmark {
    private static final int WIDTH_PX = 1400;
    private static final int HEIGHT_PX = 800;
    private static final Point NODE = new Point(80, 12);

    private final BufferedImage screen = new BufferedImage(WIDTH_PX, HEIGHT_PX, BufferedImage.TYPE_INT_RGB);
    private OutlineCanvas canvas;
    private int frame;

    /** Makes the canvas with the tool for nodes in hand and a node held. */
    @Setup
    public void open() {
        Theme.LIGHT.install();
        canvas = new OutlineCanvas(new JobModel(OutlinedJobs.traced(1)), new TaskQueue(message -> {}));
        canvas.setSize(WIDTH_PX, HEIGHT_PX);
        BufferedImage photo = new BufferedImage(4000, 3000, BufferedImage.TYPE_3BYTE_BGR);
        Random random = new Random(1);
        for (int y = 0; y < photo.getHeight(); y++) {
            for (int x = 0; x < photo.getWidth(); x++) {
                photo.setRGB(x, y, random.nextInt());
            }
        }
        canvas.setBackgroundImage(Optional.of(new BackgroundImage(photo, new Point(-150, 110), 0.08, true)));
        canvas.setTool(OutlineTool.POINTS);
        canvas.beginDrag(NODE, 5);
    }

    /** Moves the node and paints. */
    @Benchmark
    public void node() {
        frame++;
        canvas.dragTo(NODE.plus(new Point(Math.sin(frame), Math.cos(frame))));
        paint();
    }

    /** Pans by the key and paints. */
    @Benchmark
    public void pan() {
        frame++;
        canvas.cancel();
        canvas.getActionMap().get(frame % 2 == 0 ? "ctrl LEFT" : "ctrl RIGHT").actionPerformed(null);
        paint();
    }

    private void paint() {
        Graphics2D g = screen.createGraphics();
        canvas.paint(g);
        g.dispose();
    }
}
