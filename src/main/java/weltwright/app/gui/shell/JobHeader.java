package weltwright.app.gui.shell;

import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.io.FileVersion;
import weltwright.message.Messages;

/** The top line of the window: the way to the start page, the job's title, whether it is saved, and actions. */
final class JobHeader extends JPanel {
    private static final Messages MESSAGES = Messages.of(JobHeader.class);

    private final JobModel model;
    private final JButton title = new JButton();
    private final JLabel saved = new JLabel();
    private transient Optional<FileVersion> version = Optional.empty();
    private transient LocalTime savedAt = LocalTime.now(ZoneId.systemDefault());

    /**
     * @param home shows the start page
     * @param order opens customer, knife, dates and notes
     * @param others in their order, by the names of their icons
     */
    JobHeader(JobModel model, Action home, Action order, Map<String, Action> others) {
        super(new MigLayout("insets 0 8 0 12, gap 4, hidemode 3", "[][shrinkprio 300][grow][]", "[40!]"));
        this.model = model;
        JButton homeButton = toolButton("home", home);
        title.setAction(order);
        title.setName("job title");
        title.setMnemonic(KeyEvent.VK_UNDEFINED);
        title.putClientProperty("JButton.buttonType", "borderless");
        title.putClientProperty("FlatLaf.style", "font: $h3.font; margin: 2,8,2,8");
        saved.setName("saved");
        saved.putClientProperty("FlatLaf.style", "foreground: $Weltwright.secondaryText");
        add(homeButton);
        add(title, "wmin 80, hmax 36");
        add(saved, "wmin 0, wmax 260, gapleft 8");
        others.forEach((icon, action) -> add(toolButton(icon, action)));
        model.subscribe(this::update);
    }

    private static JButton toolButton(String icon, Action action) {
        JButton button = new JButton(action);
        button.setName(icon);
        ToolIcons.replaceText(button, icon);
        button.putClientProperty("JButton.buttonType", "toolBarButton");
        button.setMnemonic(KeyEvent.VK_UNDEFINED);
        return button;
    }

    private void update() {
        if (!model.fileVersion().equals(version)) {
            version = model.fileVersion();
            savedAt = LocalTime.now(ZoneId.systemDefault());
        }
        title.setText(owner());
        title.setToolTipText(owner() + ": " + MESSAGES.text("order.tip"));
        saved.setText(savedText());
        saved.setToolTipText(model.file().map(Path::toString).orElse(null));
    }

    private String owner() {
        String owner = Stream.of(model.job().customer(), model.job().knifeName())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(" · "));
        return owner.isEmpty() ? MESSAGES.text("order.unnamed") : owner;
    }

    private String savedText() {
        String time = savedAt.format(DateTimeFormatter.ofLocalizedTime(FormatStyle.SHORT));
        return model.file()
                .map(file -> MESSAGES.text(
                        model.hasUnsavedChanges() ? "saved.changed" : "saved.at",
                        String.valueOf(file.getFileName()),
                        time))
                .orElseGet(() -> MESSAGES.text("saved.never"));
    }
}
