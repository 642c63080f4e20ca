package weltwright.app.gui.upload;

import java.awt.Component;
import java.awt.Frame;
import java.awt.event.KeyEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.net.InetAddress;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.SwingConstants;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.message.Messages;

/**
 * Shows the QR code for the phone and hands over the photo that comes. A server runs while the dialog is open and for
 * ten minutes at most.
 */
public final class UploadDialog {
    private static final Messages MESSAGES = Messages.of(UploadDialog.class);
    private static final Duration LIMIT = Duration.ofMinutes(10);
    private static final int SECOND_MS = 1000;
    private static final int WIDTH = 420;

    private final JDialog dialog;
    private final Consumer<Photo> receiver;
    private final JComboBox<InetAddress> addresses;
    private final JLabel code = new JLabel("", SwingConstants.CENTER);
    private final JTextField uri = new JTextField();
    private final WrappedText state = new WrappedText(ThemeColors::text);
    private final JButton again = new JButton(MESSAGES.text("dialog.again"));
    private final Timer countdown = new Timer(SECOND_MS, e -> showTimeLeft());
    private Optional<UploadServer> server = Optional.empty();
    private Instant end = Instant.EPOCH;

    private UploadDialog(Frame over, List<InetAddress> found, Consumer<Photo> receiver) {
        this.receiver = receiver;
        dialog = new JDialog(over, MESSAGES.text("dialog.title"));
        dialog.setName("from the phone");
        dialog.setDefaultCloseOperation(JDialog.DISPOSE_ON_CLOSE);
        dialog.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosed(WindowEvent e) {
                stop();
            }
        });
        addresses = new JComboBox<>(found.toArray(InetAddress[]::new));
        JPanel content = new JPanel(new WrappedTextLayout(
                "insets 20 24 20 24, wrap 1, fillx, hidemode 3, gapy 12", "[" + WIDTH + "!,grow,fill]"));
        content.add(text(MESSAGES.text("dialog.how"), false), "wmin 0");
        code.setName("code");
        content.add(code);
        uri.setName("upload address");
        uri.setEditable(false);
        uri.setHorizontalAlignment(SwingConstants.CENTER);
        uri.getAccessibleContext().setAccessibleName(MESSAGES.text("dialog.address"));
        content.add(uri, "wmin 0");
        addresses.setName("network address");
        addresses.setRenderer(new AddressRenderer());
        addresses.getAccessibleContext().setAccessibleName(MESSAGES.text("dialog.network"));
        addresses.addActionListener(e -> start());
        if (found.size() > 1) {
            JPanel row = new JPanel(new MigLayout("insets 0, fillx", "[]8[grow,fill]"));
            JLabel label = new JLabel(MESSAGES.text("dialog.network"));
            label.setLabelFor(addresses);
            row.add(label);
            row.add(addresses, "wmin 0");
            content.add(row);
        }
        content.add(text(MESSAGES.text("dialog.trust"), true), "wmin 0");
        state.setName("upload state");
        content.add(state, "wmin 0");
        again.setName("open again");
        again.addActionListener(e -> start());
        again.setVisible(false);
        content.add(again, "growx 0, alignx center");
        dialog.setContentPane(content);
        dialog.getRootPane()
                .getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW)
                .put(KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0), "close");
        dialog.getRootPane().getActionMap().put("close", new RunnableAction("", "", dialog::dispose));
    }

    private static WrappedText text(String words, boolean quiet) {
        WrappedText text = new WrappedText(quiet ? ThemeColors::secondaryText : ThemeColors::text);
        text.showText(words);
        return text;
    }

    /**
     * Opens the dialog.
     *
     * @param receiver takes each photo; called on the event thread
     */
    public static void show(Frame over, Consumer<Photo> receiver) {
        show(over, NetworkAddresses.find(), receiver);
    }

    static void show(Frame over, List<InetAddress> addresses, Consumer<Photo> receiver) {
        UploadDialog opened = new UploadDialog(over, addresses, receiver);
        opened.start();
        opened.dialog.pack();
        opened.dialog.pack(); // the height of wrapped text is known once it has its width
        opened.dialog.setLocationRelativeTo(over);
        opened.dialog.setVisible(true);
    }

    private void start() {
        stop();
        Optional<InetAddress> address = Optional.ofNullable((InetAddress) addresses.getSelectedItem());
        if (address.isEmpty()) {
            state.showText(MESSAGES.text("dialog.noNetwork"));
            again.setVisible(true);
            return;
        }
        try {
            UploadServer started = UploadServer.start(
                    address.get(),
                    LIMIT,
                    photo -> SwingUtilities.invokeLater(() -> receive(photo)),
                    () -> SwingUtilities.invokeLater(this::showEnd));
            server = Optional.of(started);
            end = Instant.now().plus(LIMIT);
            code.setIcon(new QrCodeIcon(started.uri().toString()));
            code.getAccessibleContext().setAccessibleName(MESSAGES.text("dialog.code"));
            uri.setText(started.uri().toString());
            uri.setCaretPosition(0);
            again.setVisible(false);
            countdown.start();
            showTimeLeft();
        } catch (UserFacingException e) {
            state.showText(e.getMessage());
            again.setVisible(true);
        }
    }

    private void stop() {
        countdown.stop();
        server.ifPresent(UploadServer::close);
        server = Optional.empty();
    }

    private void receive(Photo photo) {
        if (server.isPresent()) { // else it was closed meanwhile
            dialog.dispose();
            receiver.accept(photo);
        }
    }

    private void showTimeLeft() {
        long seconds = Math.max(0, Duration.between(Instant.now(), end).toSeconds());
        state.showText(MESSAGES.text("dialog.waiting", (seconds + 59) / 60));
    }

    private void showEnd() {
        stop();
        code.setIcon(null);
        uri.setText("");
        state.showText(MESSAGES.text("dialog.end"));
        again.setVisible(true);
    }

    private static final class AddressRenderer extends DefaultListCellRenderer {
        @Override
        public Component getListCellRendererComponent(
                JList<?> list, Object value, int index, boolean isSelected, boolean cellHasFocus) {
            String text = value instanceof InetAddress address ? address.getHostAddress() : "";
            return super.getListCellRendererComponent(list, text, index, isSelected, cellHasFocus);
        }
    }
}
