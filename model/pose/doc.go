// Package pose finds the camera that took a photograph of a level rectangle of
// known size, from the pixels of its four corners: the homography of its plane by
// the normalised direct linear transformation, and the focal length and the
// place of the camera from that.
//
// Pixels are counted from the photograph's upper left corner, x to the right and
// y down, the middle of a pixel at halves. The rectangle's own axes are
// millimetres: its origin is the back left corner, x runs to the right, y toward
// the back, z up, so that it spans 0 to the width in x and minus the depth to 0
// in y.
//
// Sources: R. Hartley, A. Zisserman, Multiple View Geometry in Computer Vision,
// second edition 2004, algorithm 4.2 (normalised DLT) and section 8.8 (focal
// length from vanishing points); Z. Zhang, A Flexible New Technique for Camera
// Calibration, 2000, equations 3 and 4.
package pose
