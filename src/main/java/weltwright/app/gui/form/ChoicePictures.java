package weltwright.app.gui.form;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javax.swing.Timer;
import javax.swing.UIManager;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.error.UserFacingException;
import weltwright.job.Job;
import weltwright.message.Messages;
import weltwright.trace.ProgressListener;

/**
 * Draws the pictures of a {@link PictureChoice} in the background, anew once the choice is seen and what they show has
 * changed: the job, the theme or the scaling of the display. Used on the event thread.
 *
 * @param <I> what the pictures show, taken from the job; compared by {@code equals}
 * @param <T> value
 */
public final class ChoicePictures<I, T> {
    private static final Messages TEXTS = Messages.of(ChoicePictures.class);

    /** Painters of drawings that are made for a large canvas draw at this size, so their lines become finer. */
    private static final double REDUCED = 0.5;

    /** The pictures wait until the job has rested for so long, as between the letters of an entry; chosen by eye. */
    private static final int REST_MS = 200;

    private final PictureChoice<T> choice;
    private final JobModel model;
    private final Function<Job, Optional<I>> inputOf;
    private final Painter<I, T> painter;
    private final DerivedValue<Input<I>, Map<T, PictureChoice.Picture>> derived;
    private final Timer rest = new Timer(REST_MS, e -> update());
    private boolean changed = true;

    /**
     * Paints the picture of one value.
     *
     * @param <I> what it shows
     * @param <T> value
     */
    @FunctionalInterface
    public interface Painter<I, T> {
        /**
         * Paints it; called off the event thread.
         *
         * @param sizePx width and height of the picture
         * @throws UserFacingException if the value cannot be chosen
         */
        void paint(Graphics2D g, I shown, T value, int sizePx);
    }

    private record Input<I>(I shown, int sizePx, double scale, Color theme) {}

    private ChoicePictures(
            PictureChoice<T> choice,
            JobModel model,
            TaskQueue tasks,
            Function<Job, Optional<I>> inputOf,
            Painter<I, T> painter) {
        this.choice = choice;
        this.model = model;
        this.inputOf = inputOf;
        this.painter = painter;
        List<T> values = choice.values();
        derived = new DerivedValue<>(
                tasks,
                TEXTS.text("choice-pictures.drawing-the-choices"),
                this::input,
                (input, progress) -> pictures(input, values, progress),
                state -> {
                    if (!state.computing()) {
                        choice.setPictures(state.value().orElse(Map.of()));
                    }
                });
        rest.setRepeats(false);
    }

    /**
     * Keeps the pictures of a choice up to date from now on.
     *
     * @param tasks runs the drawing; another queue than that of the window, which shows what it does
     * @param inputOf takes what the pictures show from the job; empty where there is nothing to show yet
     */
    public static <I, T> void install(
            PictureChoice<T> choice,
            JobModel model,
            TaskQueue tasks,
            Function<Job, Optional<I>> inputOf,
            Painter<I, T> painter) {
        ChoicePictures<I, T> pictures = new ChoicePictures<>(choice, model, tasks, inputOf, painter);
        choice.onPaint(pictures::painted);
        choice.addPropertyChangeListener("UI", e -> pictures.change());
        choice.addPropertyChangeListener("graphicsConfiguration", e -> pictures.change());
        model.subscribe(pictures::change);
    }

    private void change() {
        changed = true;
        if (rest.isRunning()) {
            rest.restart();
        }
        choice.repaint();
    }

    /** A choice that is scrolled away or folded in is not painted. */
    private void painted() {
        if (changed) {
            changed = false;
            rest.restart();
        }
    }

    private void update() {
        if (choice.isShowing()) {
            derived.update();
        } else {
            changed = true;
        }
    }

    private Optional<Input<I>> input() {
        GraphicsConfiguration screen = choice.getGraphicsConfiguration();
        double scale = screen == null ? 1 : screen.getDefaultTransform().getScaleX();
        return inputOf.apply(model.job())
                .map(shown ->
                        new Input<>(shown, choice.scaledPicturePx(), scale, UIManager.getColor("Label.foreground")));
    }

    private Map<T, PictureChoice.Picture> pictures(Input<I> input, List<T> values, ProgressListener progress) {
        Map<T, PictureChoice.Picture> pictures = new HashMap<>();
        for (T value : values) {
            progress.at("", (double) pictures.size() / values.size());
            try {
                pictures.put(value, new PictureChoice.Picture(Optional.of(picture(input, value)), ""));
            } catch (UserFacingException refused) {
                pictures.put(value, new PictureChoice.Picture(Optional.empty(), refused.getMessage()));
            }
        }
        return pictures;
    }

    private BufferedImage picture(Input<I> input, T value) {
        int size = (int) Math.ceil(input.sizePx() * input.scale());
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.scale(REDUCED * input.scale(), REDUCED * input.scale());
        g.setColor(ThemeColors.text());
        try {
            painter.paint(g, input.shown(), value, (int) Math.round(input.sizePx() / REDUCED));
        } finally {
            g.dispose();
        }
        return image;
    }
}
