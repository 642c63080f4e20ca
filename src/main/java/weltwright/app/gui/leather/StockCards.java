package weltwright.app.gui.leather;

import java.awt.Font;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JMenuItem;
import javax.swing.JPanel;
import javax.swing.JPopupMenu;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.job.CuttingPlan;
import weltwright.job.ShelvedStock;
import weltwright.message.Messages;
import weltwright.units.MeasureUnit;

/** The stock on the shelf as cards. A pressed card is chosen for the job; a menu edits or removes it. */
final class StockCards extends JPanel {
    private static final String SELECTED = "selectedBackground: mix($Weltwright.accent,$Weltwright.raised,25%)";

    private final transient JobModel job;
    private final transient ShelfModel shelf;
    private final transient StockEditor editor;
    private final transient Messages messages = Messages.of(StockCards.class);
    private transient List<ShelvedStock> shown = List.of();
    private final transient List<JToggleButton> cards = new ArrayList<>();
    private MeasureUnit unit = MeasureUnit.MILLIMETRE;

    StockCards(JobModel job, ShelfModel shelf, StockEditor editor) {
        super(new MigLayout("insets 0, fillx, wrap 2, gap 4", "[grow,fill]0[]"));
        this.job = job;
        this.shelf = shelf;
        this.editor = editor;
        shelf.addListener(this::update);
        job.subscribe(this::update);
    }

    private void update() {
        if (!shown.equals(shelf.items()) || unit != job.unit()) {
            shown = shelf.items();
            unit = job.unit();
            rebuild();
        }
        List<String> chosen = job.job().cutting().stocks();
        for (int i = 0; i < cards.size(); i++) {
            cards.get(i).setSelected(chosen.contains(shown.get(i).name()));
        }
    }

    private void rebuild() {
        removeAll();
        cards.clear();
        StockWording wording = new StockWording(unit);
        for (ShelvedStock item : shown) {
            JToggleButton card = card(item, wording);
            card.addActionListener(e -> choose(item.name(), card.isSelected()));
            cards.add(card);
            add(card, "wmin 0, hmin 60");
            add(moreButton(item), "aligny top");
        }
        revalidate();
        repaint();
    }

    private static JToggleButton card(ShelvedStock item, StockWording wording) {
        JToggleButton card = new JToggleButton();
        card.setName("stock " + item.name());
        card.getAccessibleContext().setAccessibleName(item.name() + ", " + wording.size(item.stock()));
        card.setToolTipText(item.name() + ", " + wording.size(item.stock()));
        card.putClientProperty("FlatLaf.style", SELECTED);
        card.setLayout(new WrappedTextLayout(
                "insets 4 6 4 6, fillx, wrap 2, gapy 1, hidemode 3", "[]10[grow,fill]", "push[][][]push"));
        card.add(new JLabel(new StockIcon(item.stock())), "spany 3");
        card.add(new CardText(item.name(), Font.BOLD), "wmin 0");
        card.add(new CardText(wording.size(item.stock()), Font.PLAIN), "wmin 0");
        card.add(new CardText(wording.details(item), Font.PLAIN), "wmin 0");
        return card;
    }

    /** A wrapped text on a card; the mouse presses the card through it. */
    private static final class CardText extends WrappedText {
        private final int style;

        CardText(String text, int style) {
            super(ThemeColors::text);
            this.style = style;
            setFont(getFont().deriveFont(style));
            showText(text);
        }

        @Override
        public void updateUI() {
            super.updateUI();
            setFont(getFont().deriveFont(style));
        }

        @Override
        public boolean contains(int x, int y) {
            return false;
        }
    }

    private JButton moreButton(ShelvedStock item) {
        JButton more = new JButton("⋯");
        more.setName("more " + item.name());
        more.getAccessibleContext().setAccessibleName(messages.text("card.more", item.name()));
        more.setToolTipText(messages.text("card.more", item.name()));
        more.putClientProperty("JButton.buttonType", "toolBarButton");
        more.addActionListener(e -> {
            JPopupMenu menu = new JPopupMenu();
            menu.add(menuItem("card.edit", () -> editor.edit(item)));
            menu.add(menuItem("card.undo_cut", () -> shelf.change(each -> each.undo(item.name()))));
            menu.add(menuItem("card.remove", () -> {
                if (shelf.change(each -> each.remove(item.name()))) {
                    choose(item.name(), false);
                }
            }));
            menu.show(more, 0, more.getHeight());
        });
        return more;
    }

    private JMenuItem menuItem(String key, Runnable action) {
        JMenuItem item = new JMenuItem(messages.text(key));
        item.setName(key);
        item.addActionListener(e -> action.run());
        return item;
    }

    /** Chooses stock for the job, or does so no more. */
    void choose(String name, boolean chosen) {
        job.change(now -> {
            CuttingPlan plan = now.cutting();
            List<String> stocks = new ArrayList<>(plan.stocks());
            stocks.removeIf(each -> each.equals(name)
                    || shown.stream().noneMatch(item -> item.name().equals(each)));
            if (chosen) {
                stocks.add(name);
            }
            return now.withCutting(plan.withStocks(stocks));
        });
    }
}
