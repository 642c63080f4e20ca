package weltwright.image.format;

/** The file formats that a photo can be read from. */
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

    /** Returns the usual file name extension, without the dot. */
    public String extension() {
        return extension;
    }
}
