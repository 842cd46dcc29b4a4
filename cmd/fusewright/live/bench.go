package live

// benchQuestions are those of the view; none are answered yet.
var benchQuestions []question
