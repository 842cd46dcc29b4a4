package live

// whyQuestions are those of the view; none are answered yet.
var whyQuestions []question
