package weltwright.app.gui.outline;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntConsumer;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.app.gui.photo.PhotoAssessor;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.theme.Theme;
import weltwright.geometry.Point;

/**
 * Measures one frame of a drag in the outline's drawing, painted into memory at 1400 x 800 px over an image of 12
 * megapixels: a node that is dragged, with its loupe, and the drawing that is panned. Prints the time of the processor
 * for a frame, which does not depend on what else the machine does. What is wanted: 16.7 ms, which is 60 frames a
 * second. Needs a display.
 */
public final class OutlineDragBenchmark {
    private static final int WIDTH_PX = 1400;
    private static final int HEIGHT_PX = 800;
    private static final int WARM_UP_FRAMES = 200;
    private static final int FRAMES = 400;
    private static final Point NODE = new Point(80, 12);

    private final BufferedImage screen = new BufferedImage(WIDTH_PX, HEIGHT_PX, BufferedImage.TYPE_INT_RGB);
    private final OutlineCanvas canvas;

    private OutlineDragBenchmark() {
        Theme.LIGHT.install();
        canvas = new OutlineCanvas(
                new JobModel(OutlinedJobs.traced(1)), new TaskQueue(message -> {}), new PhotoAssessor());
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
    }

    /** Prints the times of both. */
    public static void main(String[] none) {
        OutlineDragBenchmark benchmark = new OutlineDragBenchmark();
        benchmark.canvas.beginDrag(NODE, 5);
        measure("a node dragged", benchmark::dragNode);
        benchmark.canvas.cancel();
        measure("panned", benchmark::pan);
        System.exit(0);
    }

    private static void measure(String what, IntConsumer frame) {
        double[] ms = new double[FRAMES];
        for (int i = 0; i < WARM_UP_FRAMES + FRAMES; i++) {
            long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            frame.accept(i);
            double took = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e6;
            if (i >= WARM_UP_FRAMES) {
                ms[i - WARM_UP_FRAMES] = took;
            }
        }
        Arrays.sort(ms);
        System.out.printf(
                Locale.ROOT,
                "%s: median %.1f ms, 95th percentile %.1f ms%n",
                what,
                ms[FRAMES / 2],
                ms[FRAMES * 95 / 100]);
    }

    private void dragNode(int frame) {
        canvas.dragTo(NODE.plus(new Point(Math.sin(frame), Math.cos(frame))));
        paint();
    }

    private void pan(int frame) {
        canvas.getActionMap().get(frame % 2 == 0 ? "ctrl LEFT" : "ctrl RIGHT").actionPerformed(null);
        paint();
    }

    private void paint() {
        Graphics2D g = screen.createGraphics();
        canvas.paint(g);
        g.dispose();
    }
}
