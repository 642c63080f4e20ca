package weltwright.app.gui.paper;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.DefaultListCellRenderer;
import javax.swing.DefaultListModel;
import javax.swing.Icon;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.event.AncestorEvent;
import javax.swing.event.AncestorListener;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.app.gui.widget.WrappingRow;
import weltwright.job.JobFields;
import weltwright.message.Messages;
import weltwright.output.PageFrame;
import weltwright.output.print.PatternDocument;

/** All pages as they will be printed, in a strip, and the selected one large. */
public final class PaperPreview extends JPanel {
    private static final int STRIP_PX = 132;
    private static final int THUMBNAIL_PX = 92;

    private final transient Messages messages = Messages.of(PaperPreview.class);
    private final transient PaperModel paper;
    private final transient ScreenPreferences screen;
    private final PagePreviewCanvas canvas;
    private final DefaultListModel<Integer> pages = new DefaultListModel<>();
    private final JList<Integer> strip = new JList<>(pages);
    private final JLabel title = new JLabel();
    private final transient ValidatedField<Double> onScreen;
    private transient List<PageThumbnail> thumbnails = List.of();
    private boolean updating;

    public PaperPreview(PaperModel paper, ScreenPreferences screen, TaskQueue tasks) {
        super(new WrappedTextLayout("insets 0, fill, gap 0", "[" + STRIP_PX + "!][grow,fill]", "[][grow,fill]"));
        this.paper = paper;
        this.screen = screen;
        canvas = new PagePreviewCanvas(tasks, screen);
        onScreen = FieldFactory.printedLength(JobFields.SCREEN_SQUARE, PageFrame.SQUARE_MM);
        onScreen.onCommit(this::setScreen);
        strip.setName("page strip");
        strip.getAccessibleContext().setAccessibleName(messages.text("preview.strip"));
        strip.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        strip.setCellRenderer(new PageCell());
        strip.addListSelectionListener(e -> {
            if (!updating && strip.getSelectedIndex() >= 0) {
                paper.setPage(strip.getSelectedIndex());
            }
        });
        canvas.bindKey("PAGE_DOWN", () -> paper.setPage(paper.page() + 1));
        canvas.bindKey("PAGE_UP", () -> paper.setPage(paper.page() - 1));
        canvas.bindKey("typed 1", this::showActualSize);
        JScrollPane scroll = new JScrollPane(strip);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        add(bar(), "span, growx, wmin 0, gapleft 12, gapright 8, wrap");
        add(scroll, "grow, wmin 0, hmin 0");
        add(canvas, "push, grow, wmin 0, hmin 0");
        addAncestorListener(new AncestorListener() {
            @Override
            public void ancestorAdded(AncestorEvent event) {
                paper.show();
            }

            @Override
            public void ancestorRemoved(AncestorEvent event) {
                paper.hide();
            }

            @Override
            public void ancestorMoved(AncestorEvent event) {}
        });
        paper.addListener(this::update);
        update();
    }

    /** Returns the canvas with the selected page. */
    public DrawingCanvas canvas() {
        return canvas;
    }

    private JPanel bar() {
        JPanel bar = new WrappingRow(6);
        title.setName("page title");
        bar.add(title);
        JButton fit = new JButton(
                new RunnableAction(messages.text("preview.fit"), messages.text("preview.fit.tip"), canvas::zoomToFit));
        fit.setName("whole page");
        JButton actual = new JButton(new RunnableAction(
                messages.text("preview.actual"), messages.text("preview.actual.tip"), this::showActualSize));
        actual.setName("actual size");
        JLabel label = new JLabel(messages.text("preview.screen"));
        label.setLabelFor(onScreen.textField());
        label.setToolTipText(messages.text("preview.screen.tip"));
        onScreen.textField().setToolTipText(messages.text("preview.screen.tip"));
        onScreen.textField().setColumns(4);
        bar.add(fit);
        bar.add(actual);
        JPanel screenSize = new JPanel(new MigLayout("insets 0", "[]6[]"));
        screenSize.add(label);
        screenSize.add(onScreen.textField(), "wmin 64");
        bar.add(screenSize);
        return bar;
    }

    private void showActualSize() {
        canvas.zoomToActualSize();
    }

    /** Takes what the square measures on the screen, draws it anew, and expects it to measure 50 mm. */
    private void setScreen() {
        if (onScreen.value() == PageFrame.SQUARE_MM) {
            return;
        }
        screen.setPxPerMm(screen.pxPerMm(getGraphicsConfiguration()) * PageFrame.SQUARE_MM / onScreen.value());
        onScreen.setValue(PageFrame.SQUARE_MM);
        showActualSize();
    }

    private void update() {
        Optional<PatternDocument> document = paper.document();
        thumbnails = paper.thumbnails();
        int count = document.map(made -> made.pages().count()).orElse(0);
        updating = true;
        while (pages.size() > count) {
            pages.remove(pages.size() - 1);
        }
        while (pages.size() < count) {
            pages.addElement(pages.size());
        }
        strip.setSelectedIndex(count == 0 ? -1 : paper.page());
        strip.ensureIndexIsVisible(paper.page());
        updating = false;
        strip.repaint();
        title.setText(
                document.isPresent()
                        ? pageName(document.get(), paper.page())
                        : messages.text(paper.isComputing() ? "preview.computing" : "preview.none"));
        canvas.setPage(document.map(PatternDocument::pages), paper.page());
        canvas.getAccessibleContext().setAccessibleDescription(title.getText());
    }

    private String pageName(PatternDocument document, int page) {
        String key = page < document.patternPages() ? "preview.page" : "preview.card";
        return messages.text(key, page + 1, document.pages().count());
    }

    /** Renders a page of the strip: its small image and its number. */
    private final class PageCell extends DefaultListCellRenderer {
        @Override
        public Component getListCellRendererComponent(
                JList<?> list, Object value, int index, boolean selected, boolean focused) {
            super.getListCellRendererComponent(list, value, index, selected, focused);
            Optional<PatternDocument> document = paper.document();
            boolean card = document.isPresent() && index >= document.get().patternPages();
            setText(messages.text(card ? "preview.card.short" : "preview.page.short", index + 1));
            document.ifPresent(made -> getAccessibleContext().setAccessibleName(pageName(made, index)));
            setHorizontalAlignment(SwingConstants.CENTER);
            setHorizontalTextPosition(SwingConstants.CENTER);
            setVerticalTextPosition(SwingConstants.BOTTOM);
            setBorder(BorderFactory.createEmptyBorder(8, 4, 8, 4));
            setIcon(document.filter(made -> index < made.pages().count())
                    .map(made -> new PageIcon(
                            made.pages().sizes().get(index).heightMm()
                                    / made.pages().sizes().get(index).widthMm(),
                            index))
                    .orElse(null));
            return this;
        }
    }

    /** A page's small image; blank until it is drawn. */
    private final class PageIcon implements Icon {
        private final Dimension size;
        private final int index;

        PageIcon(double heightOverWidth, int index) {
            int width = UIScale.scale(THUMBNAIL_PX);
            this.size = new Dimension(width, (int) Math.round(width * heightOverWidth));
            this.index = index;
        }

        @Override
        public void paintIcon(Component c, Graphics graphics, int x, int y) {
            Graphics2D g = (Graphics2D) graphics.create();
            g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            g.setColor(Color.WHITE);
            g.fillRect(x, y, size.width, size.height);
            if (index < thumbnails.size()) {
                g.drawImage(thumbnails.get(index).image(), x, y, size.width, size.height, null);
            }
            g.setColor(ThemeColors.secondaryText());
            g.drawRect(x, y, size.width - 1, size.height - 1);
            g.dispose();
        }

        @Override
        public int getIconWidth() {
            return size.width;
        }

        @Override
        public int getIconHeight() {
            return size.height;
        }
    }
}
