package tideless.report;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import tideless.study.Forecast;

/**
 * Writes a made-up forecast's files, for a look at them: a folder, then "three", "many", "long" or
 * "short", then "grey" for grey copies of the pictures as well.
 */
final class DrawPictures {
    private DrawPictures() {}

    public static void main(String[] args) throws Exception {
        Path folder = Path.of(args[0]);
        Forecast forecast =
                switch (args[1]) {
                    case "many" ->
                            MadeUpForecast.of(
                                    70,
                                    "North",
                                    "South",
                                    "Basil",
                                    "Chard",
                                    "Mint",
                                    "Pepper",
                                    "A tray with a very long name by the window");
                    case "long" -> MadeUpForecast.of(400, "Lettuce", "Basil", "Tomato");
                    case "short" -> MadeUpForecast.of(9, "Lettuce", "Basil", "Tomato");
                    default -> MadeUpForecast.threeTrays();
                };
        long before = System.nanoTime();
        WriteResult result =
                ResultFiles.write(
                        forecast, folder, ResultFiles.Wanted.ALL, Origins.UNKNOWN, ShownIn.METRIC);
        System.out.printf(
                "%d ms, %s%n", (System.nanoTime() - before) / 1_000_000, result.problem());
        if (args.length > 2) {
            for (Path file : result.files()) {
                if (file.toString().endsWith(".png")) {
                    BufferedImage colour = ImageIO.read(file.toFile());
                    BufferedImage grey = grey(colour);
                    ImageIO.write(grey, "png", Path.of(file + ".grey.png").toFile());
                }
            }
        }
    }

    /** As a grey printer shows it: Rec. 601 luma, from memory. */
    private static BufferedImage grey(BufferedImage colour) {
        BufferedImage grey =
                new BufferedImage(
                        colour.getWidth(), colour.getHeight(), BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < grey.getHeight(); y++) {
            for (int x = 0; x < grey.getWidth(); x++) {
                int rgb = colour.getRGB(x, y);
                int luma =
                        (299 * (rgb >> 16 & 255) + 587 * (rgb >> 8 & 255) + 114 * (rgb & 255))
                                / 1000;
                grey.setRGB(x, y, luma << 16 | luma << 8 | luma);
            }
        }
        return grey;
    }
}
