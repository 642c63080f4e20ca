package weltwright.app.gui.shell;

import java.awt.CardLayout;
import java.util.Optional;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.bench.BenchPanel;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.help.HelpWindow;
import weltwright.app.gui.leather.LeatherPanel;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.outline.OutlinePanel;
import weltwright.app.gui.paper.PaperPreview;
import weltwright.app.gui.pattern.PatternPanel;
import weltwright.app.gui.photo.PhotoPanel;
import weltwright.guide.GuidePage;
import weltwright.job.Job;
import weltwright.message.Messages;

/**
 * The drawings beside the forms, one of which is visible: what to drop here first, the photo, the outline, the pattern,
 * its layout on leather, its pages, the work.
 */
final class DrawingCards extends JPanel {
    private enum Card {
        FIRST_STEP,
        PHOTO,
        OUTLINE,
        PATTERN,
        LEATHER,
        PAPER,
        BENCH
    }

    private final PhotoPanel photo;
    private final OutlinePanel outline;
    private final PatternPanel pattern;
    private final LeatherPanel leather;
    private final PaperPreview paper;
    private final BenchPanel bench;
    private transient Optional<HelpWindow> help = Optional.empty();
    private Card visible = Card.FIRST_STEP;

    DrawingCards(
            PhotoPanel photo,
            OutlinePanel outline,
            PatternPanel pattern,
            LeatherPanel leather,
            PaperPreview paper,
            BenchPanel bench) {
        super(new CardLayout());
        this.photo = photo;
        this.outline = outline;
        this.pattern = pattern;
        this.leather = leather;
        this.paper = paper;
        this.bench = bench;
        add(firstStep(), Card.FIRST_STEP.name());
        add(photo, Card.PHOTO.name());
        add(outline, Card.OUTLINE.name());
        add(pattern, Card.PATTERN.name());
        add(leather, Card.LEATHER.name());
        add(paper, Card.PAPER.name());
        add(bench, Card.BENCH.name());
    }

    private static JPanel firstStep() {
        JPanel panel = new JPanel(new MigLayout("fill, insets 0", "[center]"));
        panel.setName("first step");
        panel.putClientProperty("FlatLaf.style", "background: $Weltwright.canvas");
        panel.add(new JLabel(Messages.of(DrawingCards.class).text("photo.drop")));
        return panel;
    }

    /**
     * Shows the drawing of a stage.
     *
     * @param photoRequested whether the user wants to see the photo as taken
     */
    void show(WorkflowStage stage, Job job, boolean photoRequested) {
        visible = card(stage, job, photoRequested);
        ((CardLayout) getLayout()).show(this, visible.name());
    }

    private static Card card(WorkflowStage stage, Job job, boolean photoRequested) {
        if (job.photo().isEmpty() && job.silhouette().isEmpty()) {
            return Card.FIRST_STEP;
        }
        boolean onlyPhoto =
                job.silhouette().isEmpty() || (photoRequested && job.photo().isPresent());
        return switch (stage) {
            case KNIFE -> onlyPhoto ? Card.PHOTO : Card.OUTLINE;
            case SHEATH -> Card.PATTERN;
            case LEATHER -> Card.LEATHER;
            case PAPER -> Card.PAPER;
            case BENCH -> Card.BENCH;
        };
    }

    /** Opens the guide beside the window, at the page about what is visible. */
    void showHelp(JFrame frame) {
        if (help.isEmpty()) {
            help = Optional.of(new HelpWindow(frame));
        }
        help.get().show(guidePage());
    }

    private GuidePage guidePage() {
        return switch (visible) {
            case FIRST_STEP -> GuidePage.WAY;
            case PHOTO -> GuidePage.PHOTO;
            case OUTLINE -> GuidePage.OUTLINE;
            case PATTERN -> GuidePage.SHEATH;
            case LEATHER -> GuidePage.LEATHER;
            case PAPER -> GuidePage.PRINTING;
            case BENCH -> GuidePage.BENCH;
        };
    }

    /** Returns the visible canvas. */
    DrawingCanvas activeCanvas() {
        if (paper.isShowing()) {
            return paper.canvas();
        }
        if (bench.isShowing()) {
            return bench.canvas();
        }
        if (leather.isShowing()) {
            return leather.canvas();
        }
        return pattern.isShowing() ? pattern.canvas() : photo.isShowing() ? photo.canvas() : outline.canvas();
    }
}
