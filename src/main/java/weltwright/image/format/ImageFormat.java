package weltwright.image.format;

/** A way to store a picture that the program can read. */
public enum ImageFormat {
    JPEG("jpg"),
    PNG("png"),
    TIFF("tif"),
    BMP("bmp"),
    WEBP("webp");

    private final String extension;

    ImageFormat(String extension) {
        this.extension = extension;
    }

    /** The usual ending of such a file's name, without the dot. */
    public String extension() {
        return extension;
    }
}
