package weltwright.app.gui.upload;

import java.security.SecureRandom;
import java.util.HexFormat;
import weltwright.message.Language;
import weltwright.message.Messages;

/**
 * The page for the phone's browser: one button, which takes or picks a photo and sends it.
 *
 * @param html the whole page, without anything from elsewhere
 * @param nonce that its style and its script carry
 */
record UploadPage(String html, String nonce) {
    private static final Messages MESSAGES = Messages.of(UploadPage.class);
    private static final int NONCE_BYTES = 16;

    /** Phones that store HEIC send a JPEG where the page accepts that alone. */
    private static final String PAGE = """
            <!DOCTYPE html>
            <html lang="{language}"><head><meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>Weltwright</title>
            <style nonce="{nonce}">
            body {font: 18px/1.45 system-ui, sans-serif; margin: 0; padding: 32px 24px; background: #F6F4F1; color: #22201C}
            label {display: block; background: #9A5B2B; color: #FFFFFF; text-align: center; font-weight: 600;
                   padding: 22px 16px; border-radius: 8px; margin: 24px 0}
            input {position: absolute; opacity: 0; width: 1px; height: 1px}
            input:focus-visible + label {outline: 3px solid #22201C}
            #state {min-height: 3em}
            @media (prefers-color-scheme: dark) {body {background: #25231F; color: #ECE7DF}
                   label {background: #D59A62; color: #1C1A17}}
            </style></head><body>
            <h1>{title}</h1>
            <p>{how}</p>
            <input type="file" id="photo" accept="image/jpeg"><label for="photo">{button}</label>
            <p id="state" role="status"></p>
            <script nonce="{nonce}">
            const photo = document.getElementById('photo'), state = document.getElementById('state');
            photo.addEventListener('change', async () => {
                if (!photo.files.length) return;
                state.textContent = '{sending}';
                try {
                    const answer = await fetch(location.pathname, {method: 'POST', body: photo.files[0]});
                    state.textContent = await answer.text();
                } catch (e) {
                    state.textContent = '{closed}';
                }
                photo.value = '';
            });
            </script></body></html>
            """;

    static UploadPage create() {
        byte[] random = new byte[NONCE_BYTES];
        new SecureRandom().nextBytes(random);
        String nonce = HexFormat.of().formatHex(random);
        String html = PAGE.replace("{language}", Language.current().tag()).replace("{nonce}", nonce);
        for (String key : new String[] {"title", "how", "button", "sending", "closed"}) {
            html = html.replace("{" + key + "}", escaped(MESSAGES.text("page." + key)));
        }
        return new UploadPage(html, nonce);
    }

    String contentSecurityPolicy() {
        return "default-src 'none'; connect-src 'self'; form-action 'none'; frame-ancestors 'none'; base-uri 'none';"
                + " script-src 'nonce-" + nonce + "'; style-src 'nonce-" + nonce + "'";
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace("'", "\u2019")
                .replace("\"", "&quot;");
    }
}
