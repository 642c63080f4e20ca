package weltwright.app.gui.home;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.RoundRectangle2D;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import javax.swing.SwingUtilities;
import javax.swing.UIManager;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.theme.StateIcon;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.job.Job;
import weltwright.job.JobStatus;
import weltwright.job.ShelvedJob;
import weltwright.message.Messages;

/** Paints a job as a card: the knife in its sheath, customer and knife, due date, and a strip for its status. */
final class JobCard extends JPanel {
    private static final Messages MESSAGES = Messages.of(JobCard.class);
    private static final int ARC = 12;
    private static final int STRIP = 5;
    private static final int PAD = 14;

    private transient @Nullable ShelvedJob job;
    private transient Optional<SheathPicture> picture = Optional.empty();
    private transient LocalDate today = LocalDate.MIN;
    private boolean focused;

    JobCard() {
        setOpaque(false);
    }

    void show(ShelvedJob newJob, Optional<SheathPicture> newPicture, LocalDate newToday, boolean newFocused) {
        job = newJob;
        picture = newPicture;
        today = newToday;
        focused = newFocused;
        setFont(UIManager.getFont("Label.font"));
        getAccessibleContext()
                .setAccessibleName(title(newJob.job()) + ", " + statusText(newJob.job(), status(newJob.job())));
    }

    private JobStatus status(Job of) {
        return JobStatus.of(of, today);
    }

    private static String title(Job job) {
        String owner = Stream.of(job.customer(), job.knifeName())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(" · "));
        return owner.isEmpty() ? MESSAGES.text("card.unnamed") : owner;
    }

    private String statusText(Job of, JobStatus status) {
        DateTimeFormatter format = DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM);
        if (status == JobStatus.FINISHED) {
            return MESSAGES.text("card.finished", of.finished().orElse(today).format(format));
        }
        return of.due()
                .map(day -> MESSAGES.text(day.isBefore(today) ? "card.late" : "card.due", day.format(format)))
                .orElseGet(() -> MESSAGES.text("card.waiting"));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        if (job == null) {
            return;
        }
        Job shown = job.job();
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        int gap = UIScale.scale(6);
        int width = getWidth() - 2 * gap;
        int height = getHeight() - 2 * gap;
        g.translate(gap, gap);
        int arc = UIScale.scale(ARC);
        RoundRectangle2D body = new RoundRectangle2D.Double(0.5, 0.5, width - 1, height - 1, arc, arc);
        g.setColor(ThemeColors.raised());
        g.fill(body);
        JobStatus status = status(shown);
        Shape clip = g.getClip();
        g.clip(body);
        g.setColor(color(status));
        g.fillRect(0, 0, UIScale.scale(STRIP), height);
        g.setClip(clip);
        g.setColor(focused ? ThemeColors.accent() : ThemeColors.line());
        g.setStroke(new BasicStroke(UIScale.scale(focused ? 2f : 1f)));
        g.draw(body);
        int pad = UIScale.scale(PAD);
        paintWords(g, shown, status, pad, width - 2 * pad, height - pad);
        int wordsTop = height - pad - 2 * g.getFontMetrics(getFont()).getHeight() - UIScale.scale(6);
        picture.ifPresent(
                drawing -> drawing.paint(g, pad, UIScale.scale(8), width - 2 * pad, wordsTop - UIScale.scale(8)));
        g.dispose();
    }

    private void paintWords(Graphics2D g, Job shown, JobStatus status, int x, int width, int bottom) {
        FontMetrics metrics = g.getFontMetrics(getFont());
        int baseline = bottom - metrics.getDescent();
        StateIcon icon = icon(status);
        icon.paintIcon(this, g, x, baseline - metrics.getAscent() + (metrics.getHeight() - icon.getIconHeight()) / 2);
        int textX = x + icon.getIconWidth() + UIScale.scale(6);
        g.setFont(getFont());
        g.setColor(ThemeColors.secondaryText());
        drawClipped(g, metrics, statusText(shown, status), textX, baseline, width - (textX - x));
        Font bold = getFont().deriveFont(Font.BOLD);
        g.setFont(bold);
        g.setColor(ThemeColors.text());
        drawClipped(
                g, g.getFontMetrics(bold), title(shown), x, baseline - metrics.getHeight() - UIScale.scale(3), width);
    }

    private void drawClipped(Graphics2D g, FontMetrics metrics, String text, int x, int baseline, int width) {
        g.drawString(
                SwingUtilities.layoutCompoundLabel(
                        this,
                        metrics,
                        text,
                        null,
                        0,
                        SwingConstants.LEFT,
                        0,
                        SwingConstants.LEFT,
                        new Rectangle(0, 0, width, metrics.getHeight()),
                        new Rectangle(),
                        new Rectangle(),
                        0),
                x,
                baseline);
    }

    private static Color color(JobStatus status) {
        return switch (status) {
            case WAITING -> ThemeColors.line();
            case DUE -> ThemeColors.warning();
            case FINISHED -> ThemeColors.success();
        };
    }

    private static StateIcon icon(JobStatus status) {
        return switch (status) {
            case WAITING -> StateIcon.RING;
            case DUE -> StateIcon.EXCLAMATION_MARK;
            case FINISHED -> StateIcon.TICK;
        };
    }
}
