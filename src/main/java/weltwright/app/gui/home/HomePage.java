package weltwright.app.gui.home;

import com.formdev.flatlaf.util.UIScale;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.Action;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.JViewport;
import javax.swing.SwingConstants;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.job.ShelvedJob;
import weltwright.message.Messages;

/** The start page: at the left new jobs and samples, at the right all jobs of the user with a search. */
public final class HomePage extends JPanel {
    private static final Messages MESSAGES = Messages.of(HomePage.class);
    private static final int LEFT_WIDTH = 300;

    private final JobCardList cards;
    private final JTextField search = new JTextField();
    private final WrappedText none = new WrappedText(ThemeColors::secondaryText);
    private transient List<ShelvedJob> jobs = List.of();

    /**
     * @param newJobs actions that begin a job, the most usual first
     * @param others further actions
     * @param sampleOpener opens a sample
     * @param opener opens a job's file
     */
    public HomePage(
            List<? extends Action> newJobs,
            List<? extends Action> others,
            Consumer<Sample> sampleOpener,
            Consumer<Path> opener) {
        super(new MigLayout("insets 0, fill, gap 0", "[" + LEFT_WIDTH + "!,fill]0[grow,fill]", "[grow,fill]"));
        setName("home page");
        cards = new JobCardList(opener);
        JScrollPane left = scroll(leftColumn(newJobs, others, sampleOpener));
        left.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        add(left, "hmin 0");
        add(rightColumn(), "wmin 0, hmin 0");
    }

    private static JPanel leftColumn(
            List<? extends Action> newJobs, List<? extends Action> others, Consumer<Sample> sampleOpener) {
        JPanel column = new JPanel(new MigLayout("insets 24 24 24 16, wrap 1, fillx, gapy 8", "[grow,fill]"));
        column.add(heading(MESSAGES.text("new"), "h2"), "gapbottom 4");
        for (Action action : newJobs) {
            JButton button = new JButton(action);
            button.setHorizontalAlignment(SwingConstants.LEADING);
            button.putClientProperty("FlatLaf.style", "font: bold; margin: 8,14,8,14");
            button.setMnemonic(KeyEvent.VK_UNDEFINED);
            column.add(button, "h 44!, wmin 0");
        }
        for (Action action : others) {
            JButton button = new JButton(action);
            button.setHorizontalAlignment(SwingConstants.LEADING);
            button.putClientProperty("FlatLaf.style", "margin: 4,14,4,14");
            button.setMnemonic(KeyEvent.VK_UNDEFINED);
            column.add(button, "h 34!, wmin 0");
        }
        column.add(heading(MESSAGES.text("samples"), "h4"), "gaptop 20");
        WrappedText why = new WrappedText(ThemeColors::secondaryText);
        why.showText(MESSAGES.text("samples.why"));
        column.add(why, "wmin 0");
        for (Sample sample : Sample.values()) {
            JButton button = new JButton(MESSAGES.text(sample.key()), new PictureIcon(sample.picture()));
            button.setName(sample.key());
            button.setVerticalTextPosition(SwingConstants.BOTTOM);
            button.setHorizontalTextPosition(SwingConstants.CENTER);
            button.putClientProperty("FlatLaf.style", "margin: 6,6,6,6");
            button.addActionListener(e -> sampleOpener.accept(sample));
            column.add(button, "wmin 0");
        }
        return column;
    }

    private JPanel rightColumn() {
        JPanel column = new JPanel(new MigLayout(
                "insets 24 16 0 8, fill, wrap 2, hidemode 3", "[]push[180:260:320,fill]", "[]8[]0[grow,fill]"));
        column.setBackground(ThemeColors.canvas());
        column.putClientProperty("FlatLaf.style", "background: $Weltwright.canvas");
        column.add(heading(MESSAGES.text("jobs"), "h2"), "gapleft 6"); // as the cards
        search.setName("search jobs");
        search.putClientProperty("JTextField.placeholderText", MESSAGES.text("search"));
        search.putClientProperty("JTextField.showClearButton", true);
        search.getAccessibleContext().setAccessibleName(MESSAGES.text("search"));
        search.getDocument().addDocumentListener(new DocumentListener() {
            @Override
            public void insertUpdate(DocumentEvent e) {
                update();
            }

            @Override
            public void removeUpdate(DocumentEvent e) {
                update();
            }

            @Override
            public void changedUpdate(DocumentEvent e) {
                update();
            }
        });
        column.add(search, "gapright 12");
        none.setName("no jobs");
        column.add(none, "span, growx, wmin 0, gaptop 8, gapleft 6");
        cards.getAccessibleContext().setAccessibleName(MESSAGES.text("jobs"));
        JScrollPane scroll = scroll(cards);
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        column.add(scroll, "span, grow, push, wmin 0, hmin 0");
        update();
        return column;
    }

    private static JScrollPane scroll(JComponent view) {
        JScrollPane scroll = new JScrollPane(view);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setOpaque(false);
        scroll.getViewport().setOpaque(false);
        scroll.getVerticalScrollBar().setUnitIncrement(UIScale.scale(24));
        scroll.getViewport().setScrollMode(JViewport.SIMPLE_SCROLL_MODE);
        return scroll;
    }

    private static JLabel heading(String text, String style) {
        JLabel heading = new JLabel(text);
        heading.putClientProperty("FlatLaf.styleClass", style);
        return heading;
    }

    /** Shows jobs in their order. */
    public void setJobs(List<ShelvedJob> newJobs) {
        jobs = List.copyOf(newJobs);
        update();
    }

    private void update() {
        String words = search.getText().strip();
        List<ShelvedJob> shown =
                jobs.stream().filter(job -> job.contains(words)).toList();
        cards.setJobs(shown);
        none.showText(
                jobs.isEmpty()
                        ? MESSAGES.text("jobs.none")
                        : shown.isEmpty() ? MESSAGES.text("search.none", words) : "");
        revalidate();
        repaint();
    }
}
