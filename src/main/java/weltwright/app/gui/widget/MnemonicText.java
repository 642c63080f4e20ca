package weltwright.app.gui.widget;

import javax.swing.JLabel;

/**
 * A label, and the letter of it that goes with Alt to what it labels.
 *
 * @param text without the ampersand
 * @param mnemonic in upper case; 0 for none
 */
public record MnemonicText(String text, int mnemonic) {
    /**
     * Reads a label from a message.
     *
     * @param message with an ampersand before its mnemonic, if it has one: "L&eather"
     */
    public static MnemonicText of(String message) {
        int ampersand = message.indexOf('&');
        return ampersand < 0
                ? new MnemonicText(message, 0)
                : new MnemonicText(message.replace("&", ""), Character.toUpperCase(message.charAt(ampersand + 1)));
    }

    /** Returns it as a label. */
    public JLabel label() {
        JLabel label = new JLabel(text);
        label.setDisplayedMnemonic(mnemonic);
        return label;
    }
}
